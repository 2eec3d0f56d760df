import { useMutation, useQuery } from "@tanstack/react-query";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import { queryClient, useTRPC } from "../../../app/client.tsx";
import { tell } from "../../../app/messages.ts";
import { sentenceOf } from "../../../app/trouble.ts";
import { type ListedBackup, useWhen } from "../../../parts/backups/useBackups.ts";
import { Button } from "../../../parts/controls/Button.tsx";
import { ConfirmDialog } from "../../../parts/controls/ConfirmDialog.tsx";
import { Dialog } from "../../../parts/controls/Dialog.tsx";
import { TextField } from "../../../parts/controls/TextField.tsx";
import { Answer } from "../../../parts/layout/Answer.tsx";
import { Progress } from "../../../parts/layout/Progress.tsx";
import { useSay } from "../../../words/say.ts";
import css from "./Backups.module.css";

/** Lists the backups that can be reached, each with what it holds and lacks; then confirms the chosen one. */
export function RestoreDialog({ onClose }: { readonly onClose: () => void }) {
  const { t } = useTranslation("backups");
  const trpc = useTRPC();
  const list = useQuery(trpc.backups.list.queryOptions(undefined, { staleTime: 0 }));
  const [taken, setTaken] = useState<ListedBackup | null>(null);
  if (taken !== null) return <RestoreOne backup={taken} onClose={onClose} />;
  return (
    <Dialog
      onClose={onClose}
      title={t("restore.title")}
      actions={<Button onPress={onClose}>{t("restore.cancel")}</Button>}
    >
      <p>{t("restore.what")}</p>
      <Answer query={list}>
        {({ backups, here }) => <Backups backups={backups} here={here.attempts} onTake={setTaken} />}
      </Answer>
    </Dialog>
  );
}

interface BackupsProps {
  readonly backups: readonly ListedBackup[];
  /** Number of attempts in the store now. */
  readonly here: number;
  readonly onTake: (backup: ListedBackup) => void;
}

/** Lists backups, this computer's own and the newest first: when and where, what each holds and lacks. */
function Backups({ backups, here, onTake }: BackupsProps) {
  const { t } = useTranslation("backups");
  const when = useWhen();
  if (backups.length === 0) return <p>{t("restore.none")}</p>;
  return (
    <ul className={css.list} aria-label={t("restore.caption")}>
      {backups.map((backup) => (
        <li key={`${backup.place} ${backup.name}`}>
          <div>
            <strong>{when(backup.at)}</strong>{" "}
            {backup.place === "own" ? t("restore.onThis") : t("restore.onSecond")}
            {backup.anew && `, ${t("anew")}`}
            <br />
            {t("restore.attempts", {
              count: backup.holding.attempts,
              people: t("restore.athletes", { count: backup.holding.athletes }),
            })}
            {backup.own &&
              here > backup.holding.attempts &&
              ` ${t("restore.lacking", { count: here - backup.holding.attempts })}`}
            {!backup.own && ` ${t("restore.notOwn")}`}
          </div>
          <Button onPress={() => onTake(backup)}>
            {t("restore.take")}
            <span className="unseen">{when(backup.at)}</span>
          </Button>
        </li>
      ))}
    </ul>
  );
}

interface RestoreOneProps {
  readonly backup: ListedBackup;
  readonly onClose: () => void;
}

/** Restores one backup after a confirmation, with its passphrase where it is locked. */
function RestoreOne({ backup, onClose }: RestoreOneProps) {
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
