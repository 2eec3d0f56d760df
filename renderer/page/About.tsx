import { useTranslation } from "react-i18next";
import { type PageData, sizeOf } from "../../electron/domain/reference-table/page-data.ts";
import { Stack } from "../parts/flow/Stack.tsx";
import { Cautions } from "../parts/layout/Cautions.tsx";
import { Section } from "../parts/layout/Panel.tsx";
import { dateHere, useWriteDay } from "../words/dates.ts";
import { writeNumber } from "../words/numbers.ts";
import css from "./Page.module.css";

/** Says what the page is and what it is not, who made the table and when, before anybody types anything. */
export function About({ data }: { readonly data: PageData }) {
  const { t, i18n } = useTranslation("page");
  const writeDay = useWriteDay();
  const { marks, halls } = sizeOf(data);
  const inWords = (count: number) => writeNumber(count, i18n.language);
  const until = writeDay(data.validUntil);
  const { publisher: name, key } = data;
  return (
    <Section title={t("about.title")}>
      {data.validUntil < dateHere() && <p className="alert">{t("about.old", { until })}</p>}
      <div className={css.columns}>
        <ul className={css.points}>
          {(["is", "norm", "rules", "private"] as const).map((line) => (
            <li key={line}>{t(`about.${line}`)}</li>
          ))}
        </ul>
        <Stack gap={3} top>
          <p className="strong">{t("about.clinician")}</p>
          <Cautions size="short" />
        </Stack>
      </div>
      <Stack gap={1} className="small quiet">
        <p>
          {t("about.made", {
            ...{ made: writeDay(data.made), publisher: name, until },
            ...{ marks: inWords(marks), halls: inWords(halls) },
          })}
        </p>
        <p className={css.key}>{t("about.key", { key })}</p>
      </Stack>
    </Section>
  );
}
