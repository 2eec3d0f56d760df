import { useTranslation } from "react-i18next";
import { type Column, DataTable } from "../../parts/layout/DataTable.tsx";
import { TestMark } from "../../parts/marks/TestMark.tsx";
import type { Preview } from "./preview.ts";
import css from "./WhatLeaves.module.css";
import { useBounds } from "./words.ts";

type Row = Preview["rows"][number];

/** Every row of marks.csv with the very words and figures of the file, in its order. */
export function RowsTable({ bundle }: { readonly bundle: Preview }) {
  const { t } = useTranslation("bundle");
  const boundsOf = useBounds();
  const columns: Column<Row>[] = [
    { key: "id", head: t("leaves.row.id"), cell: ({ id }) => id, width: "9rem" },
    {
      key: "test",
      head: t("leaves.row.test"),
      cell: ({ marks: [mark] }) =>
        mark !== undefined && (
          <span className={css.test}>
            <TestMark test={mark.test} size="small" /> {mark.test}
          </span>
        ),
    },
    { key: "variant", head: t("leaves.row.variant"), cell: ({ marks }) => marks[0]?.variant, width: "6rem" },
    ...quasiColumns(t),
    {
      key: "mark",
      head: t("leaves.row.mark"),
      kind: "number",
      width: "17rem",
      cell: ({ marks: [mark] }) =>
        mark !== undefined && (
          <>
            <strong>{boundsOf(mark)}</strong>
            <span className={css.unit}>{mark.unit}</span>
          </>
        ),
    },
  ];
  return (
    <DataTable
      caption={t("leaves.rows")}
      columns={columns}
      rows={bundle.rows}
      rowKey={({ id }) => id}
      maxHeight="22rem"
    />
  );
}

/** What a row says beside its marks. */
export function quasiColumns(t: ReturnType<typeof useTranslation<"bundle">>["t"]): Column<Row>[] {
  return [
    { key: "ageBand", head: t("leaves.row.ageBand"), cell: ({ ageBand }) => ageBand, width: "7rem" },
    { key: "category", head: t("leaves.row.category"), cell: ({ category }) => category, width: "7rem" },
    {
      key: "leagueSize",
      head: t("leaves.row.leagueSize"),
      cell: ({ leagueSize }) => leagueSize,
      width: "8rem",
    },
    { key: "quarter", head: t("leaves.row.quarter"), cell: ({ quarter }) => quarter, width: "7rem" },
  ];
}
