import type { HTMLAttributes, Ref } from "react";
import { FieldError } from "react-aria-components/FieldError";
import { Input } from "react-aria-components/Input";
import { Label } from "react-aria-components/Label";
import { Text } from "react-aria-components/Text";
import { TextField as AriaTextField } from "react-aria-components/TextField";
import css from "./Field.module.css";

export interface TextFieldProps {
  readonly label: string;
  readonly value: string;
  readonly onChange: (typed: string) => void;
  /** One line under the label that says what to type. */
  readonly help?: string;
  /** The error and what to do. The typed text stays: a refusal never empties a field. */
  readonly error?: string | null;
  readonly type?: "text" | "date" | "search" | "password";
  /** huge: the one value of the screen. */
  readonly size?: "normal" | "huge";
  readonly required?: boolean;
  readonly disabled?: boolean;
  readonly autoFocus?: boolean;
  readonly maxLength?: number;
  readonly inputMode?: NonNullable<HTMLAttributes<HTMLInputElement>["inputMode"]>;
  /** Small text after the value, such as "cm". */
  readonly unit?: string;
  /** To move the focus here: `ref.current?.focus()`. */
  readonly inputRef?: Ref<HTMLInputElement>;
  /** Called on Enter inside the field, for screens without a form. */
  readonly onEnter?: () => void;
  readonly onFocus?: () => void;
}

/** A line of text: label above, help under it, the sentence about an error below the value. */
export function TextField(props: TextFieldProps) {
  const { label, value, onChange, help, error = null, type = "text", size = "normal", unit } = props;
  return (
    <AriaTextField
      className={css.field ?? ""}
      data-size={size}
      value={value}
      onChange={onChange}
      type={type}
      validationBehavior="aria"
      isInvalid={error !== null}
      isRequired={props.required ?? false}
      isDisabled={props.disabled ?? false}
      autoFocus={props.autoFocus ?? false}
      {...(props.onFocus !== undefined && { onFocus: props.onFocus })}
      {...(props.maxLength !== undefined && { maxLength: props.maxLength })}
      {...(props.inputMode !== undefined && { inputMode: props.inputMode })}
    >
      <Label className="strong">{label}</Label>
      {help !== undefined && (
        <Text slot="description" className="small quiet measure">
          {help}
        </Text>
      )}
      <span className={css.box}>
        <Input
          className={css.input ?? ""}
          autoComplete="off"
          spellCheck="false"
          {...(props.inputRef !== undefined && { ref: props.inputRef })}
          onKeyDown={(event) => {
            if (event.key !== "Enter" || props.onEnter === undefined) return;
            // Whatever has the focus after it must not be pressed by the same Enter.
            event.preventDefault();
            props.onEnter();
          }}
        />
        {unit !== undefined && <span className="quiet">{unit}</span>}
      </span>
      <FieldError className={`alert ${css.error}`}>{error}</FieldError>
    </AriaTextField>
  );
}
