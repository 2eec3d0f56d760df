import { useState } from "react";
import { useTranslation } from "react-i18next";
import { Button } from "../../parts/controls/Button.tsx";
import { Choice } from "../../parts/controls/Choice.tsx";
import { Select } from "../../parts/controls/Select.tsx";
import { TextField } from "../../parts/controls/TextField.tsx";
import { Row } from "../../parts/flow/Stack.tsx";
import { Panel } from "../../parts/layout/Panel.tsx";
import type { Preview } from "../../parts/sheets/sheet.ts";
import type { SheetInHand } from "./useSheet.ts";

interface ChoicesProps {
  readonly preview: Preview;
  readonly sheet: SheetInHand;
}

/** Asks for what concerns the whole sheet and is not in it: the row of its headers, its league, its day. */
export function Choices({ preview, sheet }: ChoicesProps) {
  const { t } = useTranslation("sheets");
  const { kind, missing, fields, worksheets, asksDateOrder } = preview;
  const hasColumn = (name: string) => fields.some(({ field, header }) => field === name && header !== null);
  const asksLeague = !hasColumn("league") && !(kind === "results" && hasColumn("bib"));
  const asksDate =
    kind === "past" && !hasColumn("date") && (missing.includes("date") || sheet.said.date !== undefined);
  return (
    <Panel title={t("choices.title")}>
      <Row gap={5} wrap align="end">
        <HeaderLine preview={preview} sheet={sheet} />
        {worksheets.length > 1 && <WorksheetChoice preview={preview} sheet={sheet} />}
        {asksLeague && (
          <ForAll
            key="league"
            label={t("choices.league")}
            type="text"
            value={sheet.said.league ?? ""}
            onUse={(league) => sheet.say({ league })}
          />
        )}
        {asksDate && (
          <ForAll
            key="date"
            label={t("choices.date")}
            type="date"
            value={sheet.said.date ?? ""}
            onUse={(date) => sheet.say({ date })}
          />
        )}
        {asksDateOrder && (
          <Choice
            label={t("choices.order")}
            options={(["day", "month"] as const).map((value) => ({ value, label: t(`choices.${value}`) }))}
            value={sheet.said.dateOrder ?? null}
            onChange={(dateOrder) => sheet.say({ dateOrder })}
          />
        )}
      </Row>
    </Panel>
  );
}

function HeaderLine({ preview, sheet }: ChoicesProps) {
  const { t } = useTranslation("sheets");
  return (
    <Select
      label={t("choices.header")}
      value={preview.headerLine}
      onChange={(headerLine) => sheet.say({ headerLine })}
    >
      {preview.start.map(({ line, text }) => (
        <option key={line} value={line}>
          {t("choices.line", { line, text })}
        </option>
      ))}
    </Select>
  );
}

function WorksheetChoice({ preview, sheet }: ChoicesProps) {
  const { t } = useTranslation("sheets");
  return (
    <Select
      label={t("choices.worksheet")}
      value={preview.worksheet}
      onChange={(worksheet) => sheet.say({ worksheet })}
    >
      {preview.worksheets.map((name, index) => (
        <option key={name} value={index}>
          {name}
        </option>
      ))}
    </Select>
  );
}

interface ForAllProps {
  readonly label: string;
  readonly type: "text" | "date";
  readonly value: string;
  readonly onUse: (value: string) => void;
}

/** Asks for a value of all rows; the sheet is read again when the value is confirmed, not at every key. */
function ForAll({ label, type, value, onUse }: ForAllProps) {
  const { t } = useTranslation("sheets");
  const [typed, setTyped] = useState(value);
  const use = () => {
    if (typed.trim() !== "" && typed !== value) onUse(typed.trim());
  };
  return (
    <Row gap={2} align="end">
      <TextField label={label} type={type} value={typed} maxLength={80} onChange={setTyped} onEnter={use} />
      <Button label={`${t("choices.use")}: ${label}`} onPress={use}>
        {t("choices.use")}
      </Button>
    </Row>
  );
}
