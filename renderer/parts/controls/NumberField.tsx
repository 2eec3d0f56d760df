import { TextField, type TextFieldProps } from "./TextField.tsx";

interface NumberFieldProps extends Omit<TextFieldProps, "type" | "inputMode"> {
  /** Whole numbers only, or fractions, or a time such as 4:12.3. It only selects the touch keyboard. */
  readonly digits?: "whole" | "fraction" | "time";
}

/**
 * A number as typed. It stays text until it is sent: "1,5" or "1O" must come back with a sentence beside it, not vanish
 * or turn into another number on the way. The API parses it.
 */
export function NumberField({ digits = "whole", ...rest }: NumberFieldProps) {
  const inputMode = digits === "whole" ? "numeric" : digits === "fraction" ? "decimal" : "text";
  return <TextField {...rest} inputMode={inputMode} />;
}
