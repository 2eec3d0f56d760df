import { useTranslation } from "react-i18next";
import { choiceOf } from "../../electron/domain/keyed/keyed.ts";
import type { FieldGroup } from "../../electron/domain/reference-table/look-up.ts";
import type { LengthUnit } from "../../electron/domain/tests/protocol.ts";
import { useTestWords } from "../app/testWords.ts";
import { NumberField } from "../parts/controls/NumberField.tsx";
import { Row } from "../parts/flow/Stack.tsx";
import { useSay } from "../words/say.ts";
import css from "./Page.module.css";
import type { LookedUpTest } from "./useLooking.ts";

interface TestFieldsProps {
  readonly looked: LookedUpTest;
  readonly group: FieldGroup;
  readonly lengths: LengthUnit;
}

/** The fields of one attempt, or of all of a test, under what is given for them: a direction. */
export function TestFields({ looked, group, lengths }: TestFieldsProps) {
  const { t } = useTranslation(["page", "common"]);
  const testWord = useTestWords();
  const say = useSay();
  const { test, came } = looked;
  const errors = came.state === "wrong" ? (came.errors[group.name] ?? {}) : {};
  const typed = looked.typed[group.name] ?? {};
  const choice = choiceOf(test);
  const isGiven = group.name !== "" && choice !== null;
  const fields = group.fields.map(({ name, label = name, digits, unit }) => {
    const error = errors[name];
    // What is not typed yet is no mistake.
    const isBlank = (typed[name] ?? "").trim() === "";
    return (
      <div key={name} className={css.field} data-wide={digits === "time"}>
        <NumberField
          label={testWord(test, `field.${label}`)}
          digits={digits}
          value={typed[name] ?? ""}
          onChange={(text) => looked.write(group.name, name, text)}
          error={error === undefined || isBlank ? null : say(error)}
          {...(unit === "length" && { unit: t(`common:unit.${lengths}`) })}
        />
      </div>
    );
  });
  const row = (
    <Row gap={4} lines={3} align="end" wrap>
      {fields}
    </Row>
  );
  if (!isGiven) return row;
  return (
    <fieldset className={css.attempt}>
      <legend className="strong">{testWord(test, `choice.${choice.name}.${group.name}`)}</legend>
      {row}
    </fieldset>
  );
}
