import { useTranslation } from "react-i18next";
import { type Column, column, DataTable, numberColumn } from "../../parts/layout/DataTable.tsx";
import { TestMark } from "../../parts/marks/TestMark.tsx";
import type { Preview } from "./preview.ts";
import css from "./WhatLeaves.module.css";
import { useBounds } from "./words.ts";

type Row = Preview["rows"][number];

/** Lists every row of marks.csv in the file's order and with its very words and figures. */
export function RowsTable({ bundle }: { readonly bundle: Preview }) {
  const { t } = useTranslation("bundle");
  const boundsOf = useBounds();
  const columns: Column<Row>[] = [
    column("id", t("leaves.row.id"), "9rem", ({ id }) => id),
    column(
      "test",
      t("leaves.row.test"),
      "auto",
      ({ marks: [mark] }) =>
        mark !== undefined && (
          <span className={css.test}>
            <TestMark test={mark.test} size="small" /> {mark.test}
          </span>
        ),
    ),
    column("variant", t("leaves.row.variant"), "6rem", ({ marks }) => marks[0]?.variant),
    ...quasiColumns(t),
    numberColumn(
      "mark",
      t("leaves.row.mark"),
      "17rem",
      ({ marks: [mark] }) =>
        mark !== undefined && (
          <>
            <strong>{boundsOf(mark)}</strong>
            <span className={css.unit}>{mark.unit}</span>
          </>
        ),
    ),
  ];
  return <ReleasedRows bundle={bundle} columns={columns} />;
}

interface ReleasedRowsProps {
  readonly bundle: Preview;
  readonly columns: readonly Column<Row>[];
}

/** Lists the rows that are released, in the file's order. */
export function ReleasedRows({ bundle, columns }: ReleasedRowsProps) {
  const { t } = useTranslation("bundle");
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

/** Returns the columns of a row's quasi-identifiers. */
export function quasiColumns(t: ReturnType<typeof useTranslation<"bundle">>["t"]): Column<Row>[] {
  return [
    column("ageBand", t("leaves.row.ageBand"), "7rem", ({ ageBand }) => ageBand),
    column("category", t("leaves.row.category"), "7rem", ({ category }) => category),
    column("leagueSize", t("leaves.row.leagueSize"), "8rem", ({ leagueSize }) => leagueSize),
    column("quarter", t("leaves.row.quarter"), "7rem", ({ quarter }) => quarter),
  ];
}
