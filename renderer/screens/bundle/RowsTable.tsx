import { useTranslation } from "react-i18next";
import { type Column, DataTable } from "../../parts/DataTable.tsx";
import { TestMark } from "../../parts/TestMark.tsx";
import type { Preview } from "./preview.ts";
import css from "./WhatLeaves.module.css";

type Row = Preview["rows"][number];

/** Every row of marks.csv with the very words and figures of the file, in its order. */
export function RowsTable({ bundle }: { readonly bundle: Preview }) {
  const { t } = useTranslation("bundle");
  const columns: Column<Row>[] = [
    { key: "id", head: t("leaves.row.id"), cell: ({ id }) => id, width: "10rem" },
    {
      key: "test",
      head: t("leaves.row.test"),
      cell: ({ test }) => (
        <span className={css.test}>
          <TestMark test={test} size="small" /> {test}
        </span>
      ),
    },
    { key: "variant", head: t("leaves.row.variant"), cell: ({ variant }) => variant, width: "7rem" },
    { key: "ageBand", head: t("leaves.row.ageBand"), cell: ({ ageBand }) => ageBand, width: "8rem" },
    { key: "category", head: t("leaves.row.category"), cell: ({ category }) => category, width: "8rem" },
    { key: "quarter", head: t("leaves.row.quarter"), cell: () => bundle.quarter, width: "8rem" },
    {
      key: "mark",
      head: t("leaves.row.mark"),
      kind: "number",
      cell: ({ mark, unit }) => (
        <>
          <strong>{mark}</strong>
          <span className={css.unit}>{unit}</span>
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
