import { useQuery } from "@tanstack/react-query";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../../app/client.tsx";
import { type ListedBackup, useWhen } from "../../../parts/backups/useBackups.ts";
import { Button } from "../../../parts/controls/Button.tsx";
import { Dialog } from "../../../parts/controls/Dialog.tsx";
import { Answer } from "../../../parts/layout/Answer.tsx";
import css from "./Backups.module.css";
import { RestoreOne } from "./RestoreOne.tsx";

/** Lists the backups that can be reached, each with what it holds and lacks; then confirms the chosen one. */
export function RestoreDialog({ onClose }: { readonly onClose: () => void }) {
  const { t } = useTranslation("backups");
  const trpc = useTRPC();
  const list = useQuery(trpc.backups.list.queryOptions(undefined, { staleTime: 0 }));
  const [taken, setTaken] = useState<ListedBackup | null>(null);
  if (taken !== null) return <RestoreOne backup={taken} onClose={onClose} />;
  return (
    <Dialog
      open
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
