import type { ReactNode } from "react";
import css from "./BigNumber.module.css";

interface BigNumberProps {
  /** Already written for people ("29.5", "1:40"); a dash where there is none yet. */
  readonly number: ReactNode;
  /** Small, after the number: "cm", "of 60". */
  readonly unit?: ReactNode;
  /** What the number is, in a few words. */
  readonly label?: ReactNode;
  /** One quiet line under it: a stage, a difference, a hint. */
  readonly note?: ReactNode;
  /** row: in a list. sum: several on a screen. hero: alone on a screen. */
  readonly size?: "row" | "sum" | "hero";
  readonly tone?: "plain" | "alert";
}

/** A number as the hero: tabular figures, the unit small, one reading per glance. */
export function BigNumber({ number, unit, label, note, size = "sum", tone = "plain" }: BigNumberProps) {
  return (
    <div className={css.big} data-size={size} data-tone={tone}>
      {label !== undefined && <div className={css.label}>{label}</div>}
      <div className={css.value}>
        <span className={css.number}>{number}</span>
        {unit !== undefined && <span className={css.unit}> {unit}</span>}
      </div>
      {note !== undefined && <div className={css.note}>{note}</div>}
    </div>
  );
}
