import { useMutation } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { queryClient, useTRPC } from "../../../app/client.tsx";
import { tell } from "../../../app/messages.ts";
import { type BackupState, useBackups } from "../../../parts/backups/useBackups.ts";
import { Button } from "../../../parts/controls/Button.tsx";
import { Progress } from "../../../parts/layout/Progress.tsx";

/** Makes a backup at once, and shows the progress of any backup being made. */
export function BackUpNow({ running }: { readonly running: BackupState["running"] }) {
  const { t } = useTranslation("backups");
  const trpc = useTRPC();
  const make = useMutation(
    trpc.backups.now.mutationOptions({
      async onSuccess({ places }) {
        await queryClient.invalidateQueries(trpc.backups.pathFilter());
        const well = places.every(({ trouble }) => trouble === null);
        const sentence = { key: well ? "backups:made" : "backups:notMade" };
        tell({ tone: well ? "done" : "alert", sentence });
      },
    }),
  );
  useBackups(make.isPending);
  const words = running === null ? t("running.copying") : t(`running.${running.step}`);
  return (
    <>
      <Button busy={make.isPending} onPress={() => make.mutate()}>
        {t("now")}
      </Button>
      {(make.isPending || running !== null) && (
        <Progress
          label={t("running.label")}
          done={running?.step === "copying" ? running.done : null}
          total={running?.total ?? 1}
          words={words}
        />
      )}
    </>
  );
}
