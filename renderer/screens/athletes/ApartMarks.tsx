import { useTranslation } from "react-i18next";
import type { Written } from "../../../electron/domain/tests/protocol.ts";
import { type Column, column, DataTable } from "../../parts/layout/DataTable.tsx";
import { Section } from "../../parts/layout/Panel.tsx";
import { TestMark } from "../../parts/marks/TestMark.tsx";
import { useWriteDay } from "../../words/dates.ts";
import { useUnitWord, useVariantName } from "../../words/marks.ts";
import css from "./Series.module.css";
import type { AthletePage } from "./types.ts";

type Apart = AthletePage["apart"][number];

/** Lists the marks that compare with none above, newest first, each with the reason; nothing where there are none. */
export function ApartMarks({ apart }: { readonly apart: readonly Apart[] }) {
  const { t } = useTranslation("athletes");
  const columns = useColumns();
  if (apart.length === 0) return null;
  return (
    <Section title={t("apart.title")}>
      <p className={`small quiet ${css.quiet}`}>{t("apart.lead")}</p>
      <DataTable<Apart & { readonly place: number }>
        caption={t("apart.title")}
        rows={apart.map((each, place) => ({ ...each, place }))}
        rowKey={({ place }) => place}
        columns={columns}
      />
    </Section>
  );
}

function useColumns(): Column<Apart>[] {
  const { t } = useTranslation("athletes");
  const writeDay = useWriteDay();
  const variantName = useVariantName();
  return [
    column("date", t("series.column.date"), "10rem", ({ date }) => writeDay(date)),
    column("test", t("apart.test"), "auto", ({ test, variant }) => (
      <span className={css.title}>
        <TestMark test={test} size="small" name="ability" />
        {variant !== "" && <span className={`small quiet ${css.quiet}`}>{variantName(variant)}</span>}
      </span>
    )),
    column("mark", t("series.column.mark"), "auto", ({ written }) => <WrittenMark written={written} />),
    column("why", t("apart.why.head"), "auto", ({ why, source }) =>
      source === "imported" ? `${t(`apart.why.${why}`)}, ${t("series.imported")}` : t(`apart.why.${why}`),
    ),
  ];
}

/** Shows a mark in a row: the number strong, the unit small. */
function WrittenMark({ written: { number, unit } }: { readonly written: Written }) {
  const word = useUnitWord()(unit);
  return (
    <>
      <strong>{number}</strong>
      {word !== "" && <span className={`small quiet ${css.quiet}`}> {word}</span>}
    </>
  );
}
