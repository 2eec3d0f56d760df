import { useMutation } from "@tanstack/react-query";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import { bridge } from "../../../app/bridge.ts";
import { queryClient, useTRPC } from "../../../app/client.tsx";
import { tell } from "../../../app/messages.ts";
import type { BackupPlace } from "../../../parts/backups/useBackups.ts";
import { Button } from "../../../parts/controls/Button.tsx";
import { PassphraseDialog } from "./PassphraseDialog.tsx";
import { PlaceLine } from "./PlaceLine.tsx";

interface SecondFolderProps {
  readonly place: BackupPlace | null;
  readonly locked: boolean;
}

/** Chooses the folder of second backups, locks them, or stops them. */
export function SecondFolder({ place, locked }: SecondFolderProps) {
  const { t } = useTranslation("backups");
  const trpc = useTRPC();
  const [locking, setLocking] = useState(false);
  const again = () => queryClient.invalidateQueries(trpc.backups.pathFilter());
  const choose = useMutation({
    mutationFn: () =>
      bridge?.chooseBackupFolder() ?? Promise.resolve({ chosen: false, trouble: null } as const),
    async onSuccess(outcome) {
      if (!outcome.chosen && outcome.trouble !== null) tell({ tone: "alert", sentence: outcome.trouble });
      await again();
    },
  });
  const leave = useMutation(
    trpc.backups.leaveSecond.mutationOptions({
      async onSuccess() {
        tell({ tone: "done", sentence: { key: "backups:left" } });
        await again();
      },
    }),
  );
  return (
    <PlaceLine
      title={t("second")}
      place={place}
      none={place === null ? t("noSecond") : t("noneThere")}
      fact={locked ? t("locked") : t("open")}
    >
      <Button busy={choose.isPending} onPress={() => choose.mutate()}>
        {place === null ? t("choose") : t("change")}
      </Button>
      {place !== null && <Button onPress={() => setLocking(true)}>{locked ? t("relock") : t("lock")}</Button>}
      {place !== null && (
        <Button busy={leave.isPending} onPress={() => leave.mutate()}>
          {t("leave")}
        </Button>
      )}
      {locking && <PassphraseDialog locked={locked} onClose={() => setLocking(false)} />}
    </PlaceLine>
  );
}
