import { useTranslation } from "react-i18next";
import { Link } from "wouter";
import { useSay } from "../../words/say.ts";
import { Row } from "../flow/Stack.tsx";
import css from "./BackupLine.module.css";
import { useBackups, useWhen } from "./useBackups.ts";

/** Shows the time of the last backup in one line, at the foot of the day's screen. */
export function BackupLine() {
  const { t } = useTranslation("backups");
  const when = useWhen();
  const { data: state } = useBackups();
  if (state === undefined || state.demo) return null;
  const newest = state.places
    .flatMap(({ last }) => last ?? [])
    .sort()
    .at(-1);
  return (
    <Row as="p" gap={4} lines={2} align="center" wrap className="quiet">
      <span>{newest === undefined ? t("small.none") : t("small.last", { when: when(newest) })}</span>
      <Link href="/backups">{t("small.see")}</Link>
    </Row>
  );
}

/** Shows why the last backup failed, at the head of that screen; nothing while all is well. */
export function BackupTrouble() {
  const { t } = useTranslation("backups");
  const say = useSay();
  const { data: state } = useBackups();
  const trouble = state?.places.find((place) => place.trouble !== null)?.trouble ?? null;
  if (state === undefined || state.demo || trouble === null) return null;
  return (
    <p className={css.trouble}>
      <strong>{t("small.trouble")}</strong> {say(trouble)} <Link href="/backups">{t("small.see")}</Link>
    </p>
  );
}
