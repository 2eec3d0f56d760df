import { useState } from "react";
import { useTranslation } from "react-i18next";
import { Button } from "../../parts/controls/Button.tsx";
import { TextField } from "../../parts/controls/TextField.tsx";
import { Row } from "../../parts/flow/Stack.tsx";
import type { KeptBackRow } from "../../parts/sheets/sheet.ts";
import { columnInDoubt, type RowForm } from "./column-in-doubt.ts";
import type { SheetInHand } from "./useSheet.ts";

interface PutRightProps {
  readonly row: KeptBackRow;
  readonly form: RowForm;
  readonly sheet: SheetInHand;
}

/** Shows a row that is not imported: its cells can be corrected on the spot, or the row is left out by choice. */
export function PutRight({ row, form, sheet }: PutRightProps) {
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
