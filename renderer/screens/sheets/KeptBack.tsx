import { useState } from "react";
import { useTranslation } from "react-i18next";
import { useTRPCClient } from "../../app/client.tsx";
import { saveMade, textFile } from "../../app/saving.ts";
import { Button } from "../../parts/controls/Button.tsx";
import { TextField } from "../../parts/controls/TextField.tsx";
import { Row, Stack } from "../../parts/flow/Stack.tsx";
import { LineList } from "../../parts/sheets/LineList.tsx";
import { asSentence, type KeptBackRow } from "../../parts/sheets/sheet.ts";
import { useFieldName } from "../../parts/sheets/useFieldName.ts";
import { useSay } from "../../words/say.ts";
import { columnInDoubt, type RowForm } from "./column-in-doubt.ts";
import type { SheetInHand } from "./useSheet.ts";

interface KeptBackProps {
  /** The first rows that are not imported. */
  readonly rows: readonly KeptBackRow[];
  /** Number of all rows that are not imported. */
  readonly count: number;
  /** The other rows: to be imported, imported, or none. */
  readonly others: "goIn" | "areIn" | "none";
  readonly sheet: SheetInHand;
  /** How the sheet's columns were read, where its rows can still be corrected; undefined once it is imported. */
  readonly form?: RowForm;
}

/** Lists the rows that are not imported: line, reason and cells; they can be saved for correction. */
export function KeptBack({ rows, count, others, sheet, form }: KeptBackProps) {
  const { t } = useTranslation("sheets");
  const fieldName = useFieldName();
  const say = useSay();
  const client = useTRPCClient();
  const { uploadId } = sheet;
  const save = uploadId !== null && (
    <Button
      onPress={() =>
        void saveMade("sheets", () => client.intake.keptBackSheet.query({ uploadId }).then(textFile))
      }
    >
      {t("keptBack.save")}
    </Button>
  );
  const lines = rows.map((row) => ({
    line: row.line,
    says: (
      <Stack gap={1}>
        {reasonsOf(row).map(([text, fields]) => (
          <span key={text}>
            {fields.length > 0 && <strong>{fields.join(", ")}: </strong>}
            {text}
          </span>
        ))}
        {form !== undefined && <PutRight row={row} form={form} sheet={sheet} />}
      </Stack>
    ),
    stands: row.cells.filter((cell) => cell.trim() !== "").join(" · "),
  }));
  /** Each sentence once, with all columns that it is about. */
  function reasonsOf(row: KeptBackRow): [string, string[]][] {
    const said = Map.groupBy([row, ...row.also], ({ reason }) => say(asSentence(reason)));
    return [...said].map(([text, same]) => [
      text,
      same.flatMap(({ field }) => (field === null ? [] : [fieldName(field)])),
    ]);
  }
  const more = rows.length < count ? t("keptBack.first", { shown: rows.length, count }) : undefined;
  const title = t("keptBack.title", { count });
  return (
    <LineList title={title} lead={t(`keptBack.others.${others}`)} lines={lines} aside={save} more={more} />
  );
}

interface PutRightProps {
  readonly row: KeptBackRow;
  readonly form: RowForm;
  readonly sheet: SheetInHand;
}

/** Shows a row that is not imported: its cells can be corrected on the spot, or the row is left out by choice. */
function PutRight({ row, form, sheet }: PutRightProps) {
  const { t } = useTranslation("sheets");
  const [open, setOpen] = useState(false);
  const { line } = row;
  if (open) return <Cells row={row} form={form} sheet={sheet} onClose={() => setOpen(false)} />;
  return (
    <Row gap={2} wrap>
      <Button label={t("keptBack.putRightOf", { line })} onPress={() => setOpen(true)}>
        {t("keptBack.putRight")}
      </Button>
      <Button label={t("keptBack.leaveOutOf", { line })} onPress={() => sheet.leaveOut(line)}>
        {t("keptBack.leaveOut")}
      </Button>
    </Row>
  );
}

function Cells({ row, form, sheet, onClose }: PutRightProps & { readonly onClose: () => void }) {
  const { t } = useTranslation("sheets");
  const { headers } = form;
  const doubted = columnInDoubt(row, form);
  const [typed, setTyped] = useState<readonly string[]>(() =>
    Array.from(
      { length: Math.max(headers.length, row.cells.length) },
      (_none, index) => row.cells[index] ?? "",
    ),
  );
  function tryAgain(): void {
    onClose();
    sheet.putRight(row.line, Object.fromEntries(typed.map((text, column) => [column, text])));
  }
  return (
    <>
      <Row gap={3} wrap>
        {typed.map((text, column) => (
          <TextField
            // biome-ignore lint/suspicious/noArrayIndexKey: columns never change places, and may have equal headers
            key={column}
            label={headers[column] || String(column + 1)}
            value={text}
            maxLength={1000}
            autoFocus={column === doubted}
            onChange={(now) => setTyped(typed.map((before, index) => (index === column ? now : before)))}
            onEnter={tryAgain}
          />
        ))}
      </Row>
      <Row gap={2}>
        <Button kind="primary" onPress={tryAgain}>
          {t("keptBack.tryAgain")}
        </Button>
        <Button onPress={onClose}>{t("keptBack.cancel")}</Button>
      </Row>
    </>
  );
}
