import {
  createContext,
  type FormEvent,
  type MouseEvent,
  type ReactNode,
  useContext,
  useId,
  useState,
} from "react";

/*
 * Takes the place of the library of controls in the page for everybody, which may weigh 300 kB with all that it brings:
 * the browser's own controls, with the attributes that the parts' styles ask for. The parts themselves stay.
 */

interface Field {
  readonly id: string;
  readonly invalid: boolean;
  readonly value?: string | null;
  readonly onChange?: (value: string) => void;
  /** A group of radio buttons is labelled by its label, a field labels itself. */
  readonly group: boolean;
  readonly input?: Readonly<Record<string, unknown>>;
}

const FieldContext = createContext<Field>({ id: "", invalid: false, group: false });

const describedBy = ({ id, invalid }: Field) => (invalid ? `${id}-error ${id}-help` : `${id}-help`);

interface FieldProps {
  readonly className?: string;
  readonly children?: ReactNode;
  readonly value?: string | null;
  readonly onChange?: (value: string) => void;
  readonly isInvalid?: boolean;
  readonly isRequired?: boolean;
  readonly isDisabled?: boolean;
  readonly type?: string;
  readonly maxLength?: number;
  readonly inputMode?: string;
  readonly "data-size"?: string;
}

export function TextField(props: FieldProps) {
  const { className, children, value, onChange, isInvalid = false } = props;
  const id = useId();
  const input = {
    ...{ type: props.type, maxLength: props.maxLength, inputMode: props.inputMode },
    ...{ required: props.isRequired, disabled: props.isDisabled },
  };
  return (
    <div className={className} data-size={props["data-size"]}>
      <FieldContext value={{ id, invalid: isInvalid, value, onChange, group: false, input } as Field}>
        {children}
      </FieldContext>
    </div>
  );
}

interface InputProps {
  readonly className?: string;
  readonly [name: string]: unknown;
}

export function Input({ className, ...rest }: InputProps) {
  const field = useContext(FieldContext);
  return (
    <input
      {...rest}
      {...field.input}
      id={field.id}
      className={className}
      value={field.value ?? ""}
      onInput={(event: FormEvent<HTMLInputElement>) => field.onChange?.(event.currentTarget.value)}
      aria-invalid={field.invalid}
      aria-describedby={describedBy(field)}
      data-invalid={field.invalid || undefined}
    />
  );
}

interface TextProps {
  readonly className?: string;
  readonly children?: ReactNode;
}

export function Label({ className, children }: TextProps) {
  const { id, group } = useContext(FieldContext);
  if (group)
    return (
      <span id={`${id}-label`} className={className}>
        {children}
      </span>
    );
  return (
    <label htmlFor={id} className={className}>
      {children}
    </label>
  );
}

export function Text({ className, children }: TextProps) {
  const { id } = useContext(FieldContext);
  return (
    <span id={`${id}-help`} className={className}>
      {children}
    </span>
  );
}

export function FieldError({ className, children }: TextProps) {
  const { id, invalid } = useContext(FieldContext);
  if (!invalid) return null;
  return (
    <span id={`${id}-error`} className={className}>
      {children}
    </span>
  );
}

export function RadioGroup({ className, children, value = null, onChange, isInvalid = false }: FieldProps) {
  const id = useId();
  const field = { id, invalid: isInvalid, value, onChange, group: true } as Field;
  return (
    <div
      className={className}
      role="radiogroup"
      aria-labelledby={`${id}-label`}
      aria-describedby={describedBy(field)}
    >
      <FieldContext value={field}>{children}</FieldContext>
    </div>
  );
}

interface RadioProps extends TextProps {
  readonly value: string;
}

export function Radio({ className, children, value }: RadioProps) {
  const field = useContext(FieldContext);
  const [isFocused, setFocused] = useState(false);
  const isSelected = field.value === value;
  return (
    <label
      className={className}
      data-selected={isSelected || undefined}
      data-focus-visible={isFocused || undefined}
    >
      <input
        type="radio"
        className="unseen"
        name={field.id}
        value={value}
        checked={isSelected}
        onChange={() => field.onChange?.(value)}
        onFocus={(event) => setFocused(event.currentTarget.matches(":focus-visible"))}
        onBlur={() => setFocused(false)}
      />
      {children}
    </label>
  );
}

interface ButtonProps extends TextProps {
  readonly type?: "button" | "submit";
  readonly isDisabled?: boolean;
  readonly preventFocusOnPress?: boolean;
  readonly onPress?: () => void;
  readonly [name: `data-${string}` | `aria-${string}`]: unknown;
}

export function Button({
  type = "button",
  isDisabled = false,
  preventFocusOnPress,
  onPress,
  ...rest
}: ButtonProps) {
  return (
    <button
      {...rest}
      type={type}
      disabled={isDisabled}
      data-disabled={isDisabled || undefined}
      onMouseDown={(event: MouseEvent) => preventFocusOnPress === true && event.preventDefault()}
      onClick={() => onPress?.()}
    />
  );
}
