import { useTranslation } from "react-i18next";
import type { Choosing } from "../../../../electron/domain/tests/fields.ts";
import { Choice } from "../../../parts/Choice.tsx";
import { KeyHint } from "../../../parts/KeyHint.tsx";
import { Row } from "../../../parts/layout/Stack.tsx";
import css from "./ChosenWay.module.css";

/** The key that changes a choice which has no keys of its own. */
export const otherKey = "D";

interface ChosenWayProps {
  readonly choice: Choosing;
  readonly value: string;
  readonly onChoose: (option: string) => void;
}

/** How the test was done, in which direction, or whether it was finished: always in sight, never in the way. */
export function ChosenWay({ choice, value, onChoose }: ChosenWayProps) {
  const { t } = useTranslation("station");
  const { name, keys } = choice;
  const words: Readonly<Record<string, string>> = {
    full: t("choice.variant.full"),
    knee: t("choice.variant.knee"),
    cw: t("choice.direction.cw"),
    ccw: t("choice.direction.ccw"),
    yes: t("choice.finished.yes"),
    no: t("choice.finished.no"),
  };
  const options = choice.options.map((option, index) => ({
    value: option,
    label: (
      <>
        {words[option]}
        {keys !== null && <KeyHint keys={keys[index] ?? ""} />}
      </>
    ),
  }));
  return (
    <Row gap={3} align="end" wrap className={css.choice}>
      <Choice
        label={t(`choice.${name}.label` as "choice.variant.label")}
        hideLabel
        options={options}
        value={options.find((option) => option.value === value)?.value ?? null}
        onChange={onChoose}
      />
      {keys === null && <KeyHint keys={otherKey} does={t("choice.changes")} />}
    </Row>
  );
}
