import { useTranslation } from "react-i18next";
import type { Choosing } from "../../../../electron/domain/tests/fields.ts";
import type { TestCode } from "../../../../electron/domain/tests/registry.ts";
import { useTestWords } from "../../../app/testWords.ts";
import { Choice } from "../../../parts/controls/Choice.tsx";
import { KeyHint } from "../../../parts/controls/KeyHint.tsx";
import { Row } from "../../../parts/flow/Stack.tsx";
import css from "../../../tests/Choice.module.css";

/** The key that changes a choice without keys of its own. */
export const otherKey = "D";

interface ChosenWayProps {
  readonly test: TestCode;
  readonly choice: Choosing;
  readonly value: string;
  readonly onChoose: (option: string) => void;
}

/** Shows a choice always in sight and never in the way: the variant, the direction, or whether it was finished. */
export function ChosenWay({ test, choice, value, onChoose }: ChosenWayProps) {
  const { t } = useTranslation("station");
  const testWord = useTestWords();
  const { name, keys } = choice;
  const options = choice.options.map((option, index) => ({
    value: option,
    label: (
      <>
        {testWord(test, `choice.${name}.${option}`)}
        {keys !== null && <KeyHint keys={keys[index] ?? ""} />}
      </>
    ),
  }));
  return (
    <Row gap={3} align="end" wrap className={css.choice}>
      <Choice
        label={testWord(test, `choice.${name}.label`)}
        hideLabel
        options={options}
        value={options.find((option) => option.value === value)?.value ?? null}
        onChange={onChoose}
      />
      {keys === null && <KeyHint keys={otherKey} does={t("choice.changes")} />}
    </Row>
  );
}
