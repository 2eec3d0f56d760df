import { useTranslation } from "react-i18next";
import { writeMoment } from "../../../words/dates.ts";
import css from "./HeldPage.module.css";
import type { Held } from "./types.ts";

type Change = Held["changes"][number];

/** What was done to the record as a whole: imports, corrections, records made one; nothing where nothing was. */
export function HeldChanges({ changes }: { readonly changes: readonly Change[] }) {
  const { t, i18n } = useTranslation("steps");
  const told = changes.filter(({ table }) => table === "athlete");
  if (told.length === 0) return null;
  const whoIs = ({ name, number }: NonNullable<Change["before"]>) =>
    [name, number === "" ? t("noNumber") : t("number", { number })].join(" · ");
  return (
    <section className={css.day}>
      <h2>{t("title.identity")}</h2>
      <ul>
        {told.map(({ kind, at, before, after }) => (
          <li key={`${at} ${kind} ${JSON.stringify(before)}`}>
            {writeMoment(at, i18n.language)}: {t(`held.${kind}`)}
            {before !== null && `: ${whoIs(before)}`}
            {after !== null && ` → ${whoIs(after)}`}
          </li>
        ))}
      </ul>
    </section>
  );
}
