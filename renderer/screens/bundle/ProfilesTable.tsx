import { useTranslation } from "react-i18next";
import { type Column, DataTable } from "../../parts/layout/DataTable.tsx";
import { TestMark } from "../../parts/marks/TestMark.tsx";
import { useVariantName } from "../../words/marks.ts";
import type { Preview } from "./preview.ts";
import { quasiColumns } from "./RowsTable.tsx";
import css from "./WhatLeaves.module.css";
import { useBounds } from "./words.ts";

type Row = Preview["rows"][number];

/** Every row of profiles.csv in its order: one athlete, the tests that are told side by side. */
export function ProfilesTable({ bundle }: { readonly bundle: Preview }) {
  const { t } = useTranslation("bundle");
  const boundsOf = useBounds();
  const variantName = useVariantName();
  const tests = bundle.tests.filter(({ told }) => told > 0);
  const columns: Column<Row>[] = [
    { key: "id", head: t("leaves.row.id"), cell: ({ id }) => id, width: "9rem" },
    ...quasiColumns(t),
    ...tests.map(
      ({ test, variant, unit }): Column<Row> => ({
        key: `${test} ${variant}`,
        head: (
          <span className={css.test}>
            <TestMark test={test} size="small" name="ability" />
            {variant !== "" && <span className="small quiet">{variantName(variant)}</span>}
            <span className="small quiet">{unit}</span>
          </span>
        ),
        kind: "number",
        cell: ({ marks }) => {
          const mark = marks.find((one) => one.test === test && one.variant === variant);
          return mark === undefined ? "" : boundsOf(mark);
        },
      }),
    ),
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
