import { type ReactNode, useId } from "react";
import { Stack } from "../flow/Stack.tsx";
import css from "./Select.module.css";

interface SelectProps {
  readonly label: string;
  readonly value: number;
  readonly onChange: (value: number) => void;
  readonly children: ReactNode;
}

/** A labelled choice of one row by id: the system's own list. */
export function Select({ label, value, onChange, children }: SelectProps) {
  const id = useId();
  return (
    <Stack gap={1} className="strong">
      <label htmlFor={id}>{label}</label>
      <select
        id={id}
        className={css.select}
        value={value}
        onChange={({ currentTarget }) => onChange(Number(currentTarget.value))}
      >
        {children}
      </select>
    </Stack>
  );
}
