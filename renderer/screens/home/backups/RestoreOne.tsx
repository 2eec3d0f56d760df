import { useMutation } from "@tanstack/react-query";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import { queryClient, useTRPC } from "../../../app/client.tsx";
import { tell } from "../../../app/messages.ts";
import { sentenceOf } from "../../../app/trouble.ts";
import { type ListedBackup, useWhen } from "../../../parts/backups/useBackups.ts";
import { ConfirmDialog } from "../../../parts/controls/ConfirmDialog.tsx";
import { TextField } from "../../../parts/controls/TextField.tsx";
import { Progress } from "../../../parts/layout/Progress.tsx";
import { useSay } from "../../../words/say.ts";
import css from "./Backups.module.css";

interface RestoreOneProps {
  readonly backup: ListedBackup;
  readonly onClose: () => void;
}

/** Restores one backup after a confirmation, with its passphrase where it is locked. */
export function RestoreOne({ backup, onClose }: RestoreOneProps) {
  const { t } = useTranslation("backups");
  const say = useSay();
  const when = useWhen();
  const [passphrase, setPassphrase] = useState("");
  const restore = useRestore(onClose);
  const { place, name, locked } = backup;
  const refused = restore.isError ? say(sentenceOf(restore.error)) : null;

  function submit(): void {
    restore.mutate({ place, name, passphrase: passphrase === "" ? null : passphrase });
  }
  return (
    <ConfirmDialog
      title={t("restore.taken", { when: when(backup.at) })}
      cancel={t("restore.cancel")}
      confirm={t("restore.sure")}
      busy={restore.isPending}
      onConfirm={submit}
      onClose={onClose}
    >
      <p>{t("restore.what")}</p>
      {locked && (
        <TextField
          label={t("restore.passphrase")}
          help={t("restore.passphraseHelp")}
          type="password"
          value={passphrase}
          onChange={setPassphrase}
          error={refused}
          maxLength={200}
          onEnter={submit}
        />
      )}
      {!locked && refused !== null && (
        <p className={css.trouble} role="alert">
          {refused}
        </p>
      )}
      {restore.isPending && <Progress label={t("restore.title")} done={null} total={1} />}
    </ConfirmDialog>
  );
}

/** Restores a backup, then reads all queries again, whatever screen is shown. */
function useRestore(onDone: () => void) {
  const trpc = useTRPC();
  return useMutation(
    trpc.backups.restore.mutationOptions({
      meta: { shownByScreen: true },
      async onSuccess() {
        await queryClient.invalidateQueries();
        tell({ tone: "done", sentence: { key: "backups:restore.done" }, follows: "once" });
        onDone();
      },
    }),
  );
}
