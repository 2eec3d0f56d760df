import { useTranslation } from "react-i18next";
import { Row } from "../../parts/flow/Stack.tsx";
import { type Column, column, DataTable, numberColumn } from "../../parts/layout/DataTable.tsx";
import { FilesToRead } from "../../parts/layout/FilesToRead.tsx";
import { TestMark } from "../../parts/marks/TestMark.tsx";
import { useVariantName } from "../../words/marks.ts";
import { writeNumber } from "../../words/numbers.ts";
import type { Preview } from "./preview.ts";
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

type BundleRow = Preview["rows"][number];

/** Lists every row of profiles.csv in the file's order: one athlete, the reported tests side by side. */
function ProfilesTable({ bundle }: { readonly bundle: Preview }) {
  const { t } = useTranslation("bundle");
  const boundsOf = useBounds();
  const variantName = useVariantName();
  const tests = bundle.tests.filter(({ told }) => told > 0);
  const columns: Column<BundleRow>[] = [
    column("id", t("leaves.row.id"), "9rem", ({ id }) => id),
    ...quasiColumns(t),
    ...tests.map(
      ({ test, variant, unit }): Column<BundleRow> =>
        numberColumn(
          `${test} ${variant}`,
          <Row as="span" gap={3} lines={0} align="center" wrap className={css.test}>
            <TestMark test={test} size="small" name="ability" />
            {variant !== "" && <span className="small quiet">{variantName(variant)}</span>}
            <span className="small quiet">{unit}</span>
          </Row>,
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

/** Lists every row of marks.csv in the file's order and with its very words and figures. */
function RowsTable({ bundle }: { readonly bundle: Preview }) {
  const { t } = useTranslation("bundle");
  const boundsOf = useBounds();
  const columns: Column<BundleRow>[] = [
    column("id", t("leaves.row.id"), "9rem", ({ id }) => id),
    column(
      "test",
      t("leaves.row.test"),
      "auto",
      ({ marks: [mark] }) =>
        mark !== undefined && (
          <Row as="span" gap={3} lines={0} align="center" wrap className={css.test}>
            <TestMark test={mark.test} size="small" /> {mark.test}
          </Row>
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
            <span className={`quiet ${css.unit}`}>{mark.unit}</span>
          </>
        ),
    ),
  ];
  return <ReleasedRows bundle={bundle} columns={columns} />;
}

interface ReleasedRowsProps {
  readonly bundle: Preview;
  readonly columns: readonly Column<BundleRow>[];
}

/** Lists the rows that are released, in the file's order. */
function ReleasedRows({ bundle, columns }: ReleasedRowsProps) {
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
function quasiColumns(t: ReturnType<typeof useTranslation<"bundle">>["t"]): Column<BundleRow>[] {
  return [
    column("ageBand", t("leaves.row.ageBand"), "7rem", ({ ageBand }) => ageBand),
    column("category", t("leaves.row.category"), "7rem", ({ category }) => category),
    column("leagueSize", t("leaves.row.leagueSize"), "8rem", ({ leagueSize }) => leagueSize),
    column("quarter", t("leaves.row.quarter"), "7rem", ({ quarter }) => quarter),
  ];
}
