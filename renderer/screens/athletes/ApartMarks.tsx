import { useTranslation } from "react-i18next";
import { type Column, DataTable } from "../../parts/DataTable.tsx";
import { Section } from "../../parts/Panel.tsx";
import { TestMark } from "../../parts/TestMark.tsx";
import { useWriteDay } from "../station/clock.ts";
import css from "./Series.module.css";
import type { AthletePage } from "./types.ts";
import { WrittenMark } from "./WrittenMark.tsx";

type Apart = AthletePage["apart"][number];

/** Marks that compare with none above, newest first, each with the reason; nothing where there are none. */
export function ApartMarks({ apart }: { readonly apart: readonly Apart[] }) {
  const { t } = useTranslation("athletes");
  const columns = useColumns();
  if (apart.length === 0) return null;
  return (
    <Section title={t("apart.title")}>
      <p className={css.quiet}>{t("apart.lead")}</p>
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
  return [
    { key: "date", head: t("series.column.date"), width: "10rem", cell: ({ date }) => writeDay(date) },
    {
      key: "test",
      head: t("apart.test"),
      cell: ({ test, variant }) => (
        <span className={css.title}>
          <TestMark test={test} size="small" name="ability" />
          {(variant === "full" || variant === "knee") && (
            <span className={css.quiet}>{t(`variant.${variant}`)}</span>
          )}
        </span>
      ),
    },
    {
      key: "mark",
      head: t("series.column.mark"),
      cell: ({ written }) => <WrittenMark written={written} />,
    },
    {
      key: "why",
      head: t("apart.why.head"),
      cell: ({ why, source }) =>
        source === "imported" ? `${t(`apart.why.${why}`)}, ${t("series.imported")}` : t(`apart.why.${why}`),
    },
  ];
}
