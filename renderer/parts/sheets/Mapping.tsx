import { useId } from "react";
import { useTranslation } from "react-i18next";
import { useSay } from "../../words/say.ts";
import { Row, Stack } from "../flow/Stack.tsx";
import { Panel } from "../layout/Panel.tsx";
import css from "./Mapping.module.css";
import type { ColumnMapping, SheetColumns } from "./sheet.ts";
import { useFieldName } from "./useFieldName.ts";

interface MappingProps {
  /** How the sheet's columns were read. */
  readonly form: SheetColumns;
  readonly mapping: ColumnMapping;
  /** Assigns a header to a field; an empty header: none. */
  readonly onMap: (field: string, header: string) => void;
}

/**
 * Assigns columns to fields where the headers don't: first the required fields, then the others. Shows nothing where every
 * header says what it is.
 */
export function Mapping({ form, mapping, onMap }: MappingProps) {
  const { t } = useTranslation("sheets");
  const say = useSay();
  const { missing, unknown, fields, headers } = form;
  const lacking = missing.filter((field) => field !== "date_order");
  if (lacking.length + unknown.length + Object.keys(mapping).length === 0) return null;
  const isNeeded = missing.length > 0;
  const open = fields.filter(({ field, header }) => header === null || field in mapping);
  // A field that was assigned keeps its place, and so does the focus.
  const isFirst = (field: string) => missing.includes(field) || field in mapping;
  const needed = open.filter(({ field }) => isFirst(field));
  const rest = open.filter(({ field }) => !isFirst(field));
  const choices = (all: typeof open) =>
    all.map((each) => <FieldChoice key={each.field} {...each} headers={headers} onMap={onMap} />);
  return (
    <Panel title={t("mapping.title")} tone={isNeeded ? "alert" : "plain"}>
      {isNeeded && (
        <div role="alert">
          <ul className={`lead strong ${css.why}`}>
            {lacking.map((field) => (
              <li key={field}>{say({ key: `sheets.missing.${field}` })}</li>
            ))}
          </ul>
        </div>
      )}
      {needed.length > 0 && (
        <Row gap={4} wrap>
          {choices(needed)}
        </Row>
      )}
      {unknown.length > 0 && (
        <p className={`measure ${css.unknown}`}>
          {t("mapping.unknown", {
            count: unknown.length,
            headers: unknown.map((each) => `“${each}”`).join(", "),
          })}
        </p>
      )}
      {rest.length > 0 && (
        <details className={css.rest}>
          <summary>{t("mapping.rest")}</summary>
          <Row gap={4} wrap>
            {choices(rest)}
          </Row>
        </details>
      )}
    </Panel>
  );
}

interface FieldChoiceProps extends Pick<MappingProps, "onMap"> {
  readonly headers: readonly string[];
  readonly field: string;
  readonly header: string | null;
}

function FieldChoice({ field, header, headers, onMap }: FieldChoiceProps) {
  const { t } = useTranslation("sheets");
  const fieldName = useFieldName();
  const id = useId();
  const named = headers.filter((each) => each !== "");
  return (
    <Stack gap={1} className="strong">
      <label htmlFor={id}>{fieldName(field)}</label>
      <select
        id={id}
        className={css.select}
        value={header ?? ""}
        onChange={(event) => onMap(field, event.target.value)}
      >
        <option value="">{t("mapping.none")}</option>
        {named.map((each, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: two headers of a sheet may be equal, and never change places
          <option key={index} value={each}>
            {each}
          </option>
        ))}
      </select>
    </Stack>
  );
}
