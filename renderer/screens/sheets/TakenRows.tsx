import type { TFunction } from "i18next";
import { useTranslation } from "react-i18next";
import { testCodes } from "../../../electron/domain/tests/registry.ts";
import { Button } from "../../parts/controls/Button.tsx";
import { Row } from "../../parts/flow/Stack.tsx";
import { type Column, column, DataTable, numberColumn } from "../../parts/layout/DataTable.tsx";
import { Tag } from "../../parts/marks/Tag.tsx";
import { TestMark } from "../../parts/marks/TestMark.tsx";
import type { Preview, PreviewRow } from "../../parts/sheets/sheet.ts";
import { useFieldName } from "../../parts/sheets/useFieldName.ts";
import { markIn, Seen, whoIn } from "./cells.tsx";
import type { SheetInHand } from "./useSheet.ts";

/** Lists the first rows as they would be imported. */
export function TakenRows({ preview, sheet }: { readonly preview: Preview; readonly sheet: SheetInHand }) {
  const { t } = useTranslation("sheets");
  const fieldName = useFieldName();
  const columns = preview.kind === "roster" ? rosterColumns(preview, fieldName) : resultColumns(preview, t);
  return (
    <DataTable
      caption={t("rows.title")}
      columns={[...common(t), ...columns, leavingOut(t, sheet)]}
      rows={preview.rows}
      // A row of a wide sheet holds several tests.
      rowKey={({ line, cells }) =>
        `${line} ${cells.test} ${cells.date} ${cells.variant} ${JSON.stringify(cells)}`
      }
      nameColumn={preview.kind === "roster" ? "name" : "who"}
      maxHeight="28rem"
    />
  );
}

type Words = TFunction<"sheets">;

function common(t: Words): Column<PreviewRow>[] {
  return [
    numberColumn("line", t("column.line"), "4.5rem", ({ line }) => line),
    column("status", t("column.status"), "7rem", (row) => <Status row={row} t={t} />),
  ];
}

function leavingOut(t: Words, sheet: SheetInHand): Column<PreviewRow> {
  return column("leaveOut", t("column.leaveOut"), "10.5rem", ({ line }) => (
    <Button label={t("keptBack.leaveOutOf", { line })} onPress={() => sheet.leaveOut(line)}>
      {t("keptBack.leaveOut")}
    </Button>
  ));
}

function Status({ row, t }: { readonly row: PreviewRow; readonly t: Words }) {
  return <Tag tone={row.status === "known" ? "quiet" : "go"}>{t(`status.${row.status}`)}</Tag>;
}

/** Returns a column for each field that the sheet has, the name first. */
function rosterColumns({ fields }: Preview, fieldName: (field: string) => string): Column<PreviewRow>[] {
  const widths: Readonly<Record<string, string>> = {
    number: "6rem",
    birth_year: "9rem",
    share: "6rem",
    board: "7rem",
  };
  return fields
    .filter(({ header }) => header !== null)
    .map(({ field }) => field)
    .sort((a, b) => Number(b === "name") - Number(a === "name"))
    .map((field) => ({
      key: field,
      head: fieldName(field),
      cell: ({ cells, was }) => {
        const now = cells[field] ?? "";
        return field in was ? <ins>{now}</ins> : now;
      },
      ...(widths[field] !== undefined && { width: widths[field] }),
    }));
}

function resultColumns({ kind }: Preview, t: Words): Column<PreviewRow>[] {
  const who = column<PreviewRow>("who", t("column.who"), "18rem", ({ cells }) => whoIn(cells, t));
  const test = column<PreviewRow>("test", t("field.test"), "13rem", ({ cells }) => (
    <Test text={cells.test ?? ""} variant={cells.variant ?? ""} />
  ));
  if (kind === "results") {
    const by = column<PreviewRow>("by", t("field.entered_by"), "7rem", ({ cells }) => cells.entered_by ?? "");
    return [who, test, column("seen", t("column.seen"), "auto", ({ cells }) => <Seen cells={cells} />), by];
  }
  const date = column<PreviewRow>("date", t("field.date"), "9.5rem", ({ cells }) => cells.date ?? "");
  const mark = numberColumn<PreviewRow>("mark", t("field.mark"), "9rem", ({ cells }) => markIn(cells));
  return [who, date, test, mark];
}

/** Shows a test by its sign, or the sheet's own text where that is no code. */
function Test({ text, variant }: { readonly text: string; readonly variant: string }) {
  const plain = (name: string) => name.toLowerCase().replace(/[\s_-]+/g, "");
  const code = testCodes.find((each) => plain(each) === plain(text));
  return (
    <Row as="span" gap={2} align="center">
      {code === undefined ? text : <TestMark test={code} size="small" name="test" />}
      {variant}
    </Row>
  );
}
