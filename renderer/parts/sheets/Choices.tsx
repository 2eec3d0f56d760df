import { useState } from "react";
import { useTranslation } from "react-i18next";
import { useVariantName } from "../../words/marks.ts";
import { Button } from "../controls/Button.tsx";
import { Choice } from "../controls/Choice.tsx";
import { Select } from "../controls/Select.tsx";
import { TextField } from "../controls/TextField.tsx";
import { Row } from "../flow/Stack.tsx";
import { Panel } from "../layout/Panel.tsx";
import type { SaidOfAll, SheetForm } from "./sheet.ts";
import { useFieldName } from "./useFieldName.ts";

interface ChoicesProps {
  /** How the sheet was read. */
  readonly form: SheetForm;
  readonly said: SaidOfAll;
  readonly onSay: (more: SaidOfAll) => void;
  /** A heading that names the sheet, where there are several. */
  readonly title?: string;
}

/** Asks for what concerns the whole sheet and is not in it: the row of its headers, its league, its day. */
export function Choices({ form, said, onSay, title }: ChoicesProps) {
  const { t } = useTranslation("sheets");
  const { kind, missing, fields, worksheets, asksDateOrder, asked } = form;
  const hasColumn = (name: string) => fields.some(({ field, header }) => field === name && header !== null);
  const asksLeague = !hasColumn("league") && !(kind === "results" && hasColumn("bib"));
  const asksDate =
    kind === "past" && !hasColumn("date") && (missing.includes("date") || said.date !== undefined);
  return (
    <Panel title={title ?? t("choices.title")}>
      <Row gap={5} wrap align="end">
        <HeaderLine form={form} onSay={onSay} />
        {worksheets.length > 1 && <WorksheetChoice form={form} onSay={onSay} />}
        {asksLeague && (
          <ForAll
            key="league"
            label={t("choices.league")}
            type="text"
            value={said.league ?? ""}
            onUse={(league) => onSay({ league })}
          />
        )}
        {asksDate && (
          <ForAll
            key="date"
            label={t("choices.date")}
            type="date"
            value={said.date ?? ""}
            onUse={(date) => onSay({ date })}
          />
        )}
        {asksDateOrder && (
          <Choice
            label={t("choices.order")}
            options={(["day", "month"] as const).map((value) => ({ value, label: t(`choices.${value}`) }))}
            value={said.dateOrder ?? null}
            onChange={(dateOrder) => onSay({ dateOrder })}
          />
        )}
        {asked.map((column) => (
          <BlankChoice key={column.name} {...{ column, said, onSay }} />
        ))}
      </Row>
    </Panel>
  );
}

interface BlankProps extends Pick<ChoicesProps, "said" | "onSay"> {
  readonly column: SheetForm["asked"][number];
}

/** Asks what a blank cell of a column means that can't be left blank; until then its rows wait. */
function BlankChoice({ column: { name, options }, said: { blanks }, onSay }: BlankProps) {
  const { t } = useTranslation("sheets");
  const fieldName = useFieldName();
  const variantName = useVariantName();
  return (
    <Choice
      label={t("choices.blank", { column: fieldName(name) })}
      options={options.map((value) => ({ value, label: variantName(value) }))}
      value={blanks?.[name] ?? null}
      onChange={(meant) => onSay({ blanks: { ...blanks, [name]: meant } })}
    />
  );
}

function HeaderLine({ form, onSay }: Pick<ChoicesProps, "form" | "onSay">) {
  const { t } = useTranslation("sheets");
  return (
    <Select
      label={t("choices.header")}
      value={form.headerLine}
      onChange={(headerLine) => onSay({ headerLine })}
    >
      {form.start.map(({ line, text }) => (
        <option key={line} value={line}>
          {t("choices.line", { line, text })}
        </option>
      ))}
    </Select>
  );
}

function WorksheetChoice({ form, onSay }: Pick<ChoicesProps, "form" | "onSay">) {
  const { t } = useTranslation("sheets");
  return (
    <Select
      label={t("choices.worksheet")}
      value={form.worksheet}
      onChange={(worksheet) => onSay({ worksheet })}
    >
      {form.worksheets.map((name, index) => (
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
