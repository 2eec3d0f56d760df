import type { ReactNode } from "react";
import { CheckboxButton, CheckboxField } from "react-aria-components/Checkbox";
import css from "./Check.module.css";

interface CheckProps {
  readonly children: ReactNode;
  readonly checked: boolean;
  readonly onChange: (checked: boolean) => void;
}

/** A checkbox. The whole line is the target. */
export function Check({ children, checked, onChange }: CheckProps) {
  return (
    <CheckboxField isSelected={checked} onChange={onChange}>
      <CheckboxButton className={css.check ?? ""}>
        <svg className={css.box} viewBox="0 0 24 24" aria-hidden="true">
          <rect x="1.5" y="1.5" width="21" height="21" />
          {checked && <path d="m5 12.5 5 5L19.5 6" />}
        </svg>
        {children}
      </CheckboxButton>
    </CheckboxField>
  );
}
