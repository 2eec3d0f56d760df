import { useTranslation } from "react-i18next";
import { useSay } from "../../app/say.ts";
import { type Column, DataTable } from "../../parts/DataTable.tsx";
import { Section } from "../../parts/Panel.tsx";
import { TestMark } from "../../parts/TestMark.tsx";
import { useWriteDay } from "../station/clock.ts";
import css from "./AthletePage.module.css";
import type { AthletePage } from "./types.ts";

type Earlier = AthletePage["history"][number];

/** Marks of other days, newest first, and whether they compare with today's. */
export function History({ history }: { readonly history: AthletePage["history"] }) {
  const { t } = useTranslation("athletes");
  const columns = useColumns();
  return (
    <Section title={t("history.title")}>
      <DataTable<Earlier>
        caption={t("history.title")}
        rows={history}
        rowKey={({ date, test, variant, source, written }) =>
          `${date} ${test} ${variant} ${source} ${written.number}`
        }
        columns={columns}
        empty={<p className={css.none}>{t("history.none")}</p>}
      />
    </Section>
  );
}

function useColumns(): Column<Earlier>[] {
  const { t } = useTranslation(["athletes", "common"]);
  const say = useSay();
  const writeDay = useWriteDay();
  return [
    { key: "date", head: t("history.date"), width: "10rem", cell: ({ date }) => writeDay(date) },
    {
      key: "test",
      head: t("history.test"),
      cell: ({ test, variant }) => (
        <span className={css.testOfDay}>
          <TestMark test={test} size="small" name="ability" />
          {(variant === "full" || variant === "knee") && (
            <span className={css.none}>{t(`variant.${variant}`)}</span>
          )}
        </span>
      ),
    },
    {
      key: "mark",
      head: t("history.mark"),
      cell: ({ written: { number, unit, note } }) => (
        <>
          <strong>{number}</strong> {unit !== "" && unit !== "min:s" && t(`common:unit.${unit}`)}{" "}
          {note !== undefined && <span className={css.none}>{say(note)}</span>}
        </>
      ),
    },
    {
      key: "compares",
      head: t("history.compares"),
      cell: ({ compares, source }) => (
        <>
          {compares !== null && (compares ? t("history.yes") : t("history.otherRules"))}
          {source === "imported" && <span className={css.none}> {t("history.imported")}</span>}
        </>
      ),
    },
  ];
}
