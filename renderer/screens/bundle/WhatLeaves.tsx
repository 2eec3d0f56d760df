import { useTranslation } from "react-i18next";
import { type Column, column, numberColumn } from "../../parts/layout/DataTable.tsx";
import { FilesToRead } from "../../parts/layout/FilesToRead.tsx";
import { TestMark } from "../../parts/marks/TestMark.tsx";
import { useVariantName } from "../../words/marks.ts";
import { writeNumber } from "../../words/numbers.ts";
import type { Preview } from "./preview.ts";
import { quasiColumns, ReleasedRows, RowsTable } from "./RowsTable.tsx";
import { TestsTable } from "./TestsTable.tsx";
import css from "./WhatLeaves.module.css";
import { useBounds } from "./words.ts";

/** Shows everything to be released: distributions before and after, each row, and the files as they are. */
export function WhatLeaves({ bundle }: { readonly bundle: Preview }) {
  const { t } = useTranslation("bundle");
  return (
    <>
      <p className="measure">{t("leaves.without")}</p>
      <TestsTable bundle={bundle} />
      <div className={css.part}>
        <h3>{t("leaves.rows")}</h3>
        {bundle.kind === "marks" ? <RowsTable bundle={bundle} /> : <ProfilesTable bundle={bundle} />}
      </div>
      <div className={css.part}>
        <h3>{t("leaves.files")}</h3>
        <FilesInside bundle={bundle} />
      </div>
    </>
  );
}

const told = [
  "datapackage.json",
  "marks.csv",
  "profiles.csv",
  "summary.csv",
  "protocols.json",
  "codebook.md",
  "privacy.json",
] as const;

/** Lists the files of the zip; each opens to be read as it would leave. */
function FilesInside({ bundle }: { readonly bundle: Preview }) {
  const { t, i18n } = useTranslation("bundle");
  const files = bundle.files.map(({ name, bytes, text }) => {
    const known = told.find((candidate) => candidate === name);
    return {
      name,
      text,
      what: known === undefined ? "" : t(`leaves.file.${known}`),
      size: t("count.bytes", { count: bytes, shown: writeNumber(bytes, i18n.language) }),
    };
  });
  return <FilesToRead files={files} />;
}

type Row = Preview["rows"][number];

/** Lists every row of profiles.csv in the file's order: one athlete, the reported tests side by side. */
function ProfilesTable({ bundle }: { readonly bundle: Preview }) {
  const { t } = useTranslation("bundle");
  const boundsOf = useBounds();
  const variantName = useVariantName();
  const tests = bundle.tests.filter(({ told }) => told > 0);
  const columns: Column<Row>[] = [
    column("id", t("leaves.row.id"), "9rem", ({ id }) => id),
    ...quasiColumns(t),
    ...tests.map(
      ({ test, variant, unit }): Column<Row> =>
        numberColumn(
          `${test} ${variant}`,
          <span className={css.test}>
            <TestMark test={test} size="small" name="ability" />
            {variant !== "" && <span className="small quiet">{variantName(variant)}</span>}
            <span className="small quiet">{unit}</span>
          </span>,
          "auto",
          ({ marks }) => {
            const mark = marks.find((one) => one.test === test && one.variant === variant);
            return mark === undefined ? "" : boundsOf(mark);
          },
        ),
    ),
  ];
  return <ReleasedRows bundle={bundle} columns={columns} />;
}
