import { useId } from "react";
import { useTranslation } from "react-i18next";
import { Row, Stack } from "../../parts/flow/Stack.tsx";
import { Panel } from "../../parts/layout/Panel.tsx";
import type { Preview } from "../../parts/sheets/sheet.ts";
import { useFieldName } from "../../parts/sheets/useFieldName.ts";
import { useSay } from "../../words/say.ts";
import css from "./Mapping.module.css";
import type { SheetInHand } from "./useSheet.ts";

interface MappingProps {
  readonly preview: Preview;
  readonly sheet: SheetInHand;
}

/** Assigns columns to fields where the headers don't: first the required fields, then the others. */
export function Mapping({ preview, sheet }: MappingProps) {
  const { t } = useTranslation("sheets");
  const say = useSay();
  const { missing, unknown, fields } = preview;
  const isNeeded = missing.length > 0;
  const open = fields.filter(({ field, header }) => header === null || field in sheet.mapping);
  // A field that was assigned keeps its place, and so does the focus.
  const isFirst = (field: string) => missing.includes(field) || field in sheet.mapping;
  const needed = open.filter(({ field }) => isFirst(field));
  const rest = open.filter(({ field }) => !isFirst(field));
  const choices = (all: typeof open) =>
    all.map(({ field, header }) => (
      <FieldChoice key={field} field={field} header={header} preview={preview} sheet={sheet} />
    ));
  return (
    <Panel title={t("mapping.title")} tone={isNeeded ? "alert" : "plain"}>
      {isNeeded && (
        <div role="alert">
          <ul className={`lead strong ${css.why}`}>
            {missing
              .filter((field) => field !== "date_order")
              .map((field) => (
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

interface FieldChoiceProps extends MappingProps {
  readonly field: string;
  readonly header: string | null;
}

function FieldChoice({ field, header, preview, sheet }: FieldChoiceProps) {
  const { t } = useTranslation("sheets");
  const fieldName = useFieldName();
  const id = useId();
  const named = preview.headers.filter((each) => each !== "");
  return (
    <Stack gap={1} className="strong">
      <label htmlFor={id}>{fieldName(field)}</label>
      <select
        id={id}
        className={css.select}
        value={header ?? ""}
        onChange={(event) => sheet.map(field, event.target.value)}
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
