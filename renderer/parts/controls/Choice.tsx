import type { ReactNode } from "react";
import { FieldError } from "react-aria-components/FieldError";
import { Label } from "react-aria-components/Label";
import { Radio, RadioGroup } from "react-aria-components/RadioGroup";
import { Text } from "react-aria-components/Text";
import { Row } from "../flow/Stack.tsx";
import css from "./Choice.module.css";
import field from "./Field.module.css";

interface ChoiceOption<Value extends string> {
  readonly value: Value;
  readonly label: ReactNode;
}

interface ChoiceProps<Value extends string> {
  readonly label: string;
  readonly options: readonly ChoiceOption<Value>[];
  /** null: no choice yet. */
  readonly value: Value | null;
  readonly onChange: (value: Value) => void;
  readonly help?: string;
  readonly error?: string | null;
  /** Keeps the label for screen readers only, where it is obvious to the eye. */
  readonly hideLabel?: boolean;
}

/** One of a few, side by side like marks on a tape. Arrow keys move, and every choice is a large target. */
export function Choice<Value extends string>(props: ChoiceProps<Value>) {
  const { label, options, value, onChange, help, error = null, hideLabel = false } = props;
  return (
    <RadioGroup
      className={field.field ?? ""}
      orientation="horizontal"
      value={value}
      isInvalid={error !== null}
      validationBehavior="aria"
      onChange={(chosen) => {
        const option = options.find((candidate) => candidate.value === chosen);
        if (option !== undefined) onChange(option.value);
      }}
    >
      <Label className={hideLabel ? "unseen" : "strong"}>{label}</Label>
      {help !== undefined && (
        <Text slot="description" className="small quiet measure">
          {help}
        </Text>
      )}
      <Row lines={1} wrap>
        {options.map((option) => (
          <Radio key={option.value} value={option.value} className={css.option ?? ""}>
            <span className={css.dot} aria-hidden="true" />
            {option.label}
          </Radio>
        ))}
      </Row>
      <FieldError className={`alert ${field.error}`}>{error}</FieldError>
    </RadioGroup>
  );
}
