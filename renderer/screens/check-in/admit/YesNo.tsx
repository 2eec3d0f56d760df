import type { Part } from "../../../../electron/domain/people/questions.ts";
import { Choice } from "../../../parts/controls/Choice.tsx";
import css from "./AdmissionForm.module.css";

interface YesNoProps {
  readonly part: Part;
  readonly label: string;
  readonly yes: string;
  readonly no: string;
  readonly value: boolean | null;
  readonly onChange: (yes: boolean) => void;
  readonly error: string | null;
}

/** Asks a question on one line with its two answers at the end: the usual one first. */
export function YesNo({ part, label, yes, no, value, onChange, error }: YesNoProps) {
  return (
    <div className={css.row} data-part={part} data-missing={error !== null}>
      <span aria-hidden="true">{label}</span>
      <Choice
        label={label}
        hideLabel
        options={[
          { value: "no", label: no },
          { value: "yes", label: yes },
        ]}
        value={value === null ? null : value ? "yes" : "no"}
        onChange={(chosen) => onChange(chosen === "yes")}
        error={error}
      />
    </div>
  );
}
