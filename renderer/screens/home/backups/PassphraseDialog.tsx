import { useMutation } from "@tanstack/react-query";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import { queryClient, useTRPC } from "../../../app/client.tsx";
import { tell } from "../../../app/messages.ts";
import { Button } from "../../../parts/controls/Button.tsx";
import { ConfirmDialog } from "../../../parts/controls/ConfirmDialog.tsx";
import { TextField } from "../../../parts/controls/TextField.tsx";

interface PassphraseDialogProps {
  readonly locked: boolean;
  readonly onClose: () => void;
}

const least = 12;

/** Asks for a passphrase twice, since a slip would lock everybody out. */
export function PassphraseDialog({ locked, onClose }: PassphraseDialogProps) {
  const { t } = useTranslation("backups");
  const [typed, setTyped] = useState("");
  const [again, setAgain] = useState("");
  const [tried, setTried] = useState(false);
  const set = useSetPassphrase(onClose);
  const short = typed.length < least;
  const differs = typed !== again;

  function submit(): void {
    setTried(true);
    if (!short && !differs) set.mutate({ passphrase: typed });
  }
  return (
    <ConfirmDialog
      title={t("passphrase.title")}
      cancel={t("passphrase.cancel")}
      between={
        locked && (
          <Button busy={set.isPending} onPress={() => set.mutate({ passphrase: null })}>
            {t("passphrase.none")}
          </Button>
        )
      }
      confirm={t("passphrase.set")}
      kind="primary"
      busy={set.isPending}
      onConfirm={submit}
      onClose={onClose}
    >
      <p>{t("passphrase.what")}</p>
      <TextField
        label={t("passphrase.label")}
        help={t("passphrase.help")}
        type="password"
        value={typed}
        onChange={setTyped}
        error={tried && short ? t("passphrase.short") : null}
        maxLength={200}
        autoFocus
      />
      <TextField
        label={t("passphrase.again")}
        type="password"
        value={again}
        onChange={setAgain}
        error={tried && !short && differs ? t("passphrase.differs") : null}
        maxLength={200}
        onEnter={submit}
      />
    </ConfirmDialog>
  );
}

function useSetPassphrase(onDone: () => void) {
  const trpc = useTRPC();
  return useMutation(
    trpc.backups.setPassphrase.mutationOptions({
      async onSuccess({ locked }) {
        tell({ tone: "done", sentence: { key: `backups:passphrase.${locked ? "done" : "opened"}` } });
        await queryClient.invalidateQueries(trpc.backups.pathFilter());
        onDone();
      },
    }),
  );
}
