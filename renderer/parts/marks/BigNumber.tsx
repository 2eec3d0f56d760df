import type { ReactNode } from "react";
import { useShowNumber } from "../../words/numbers.ts";
import { Stack } from "../flow/Stack.tsx";
import css from "./BigNumber.module.css";

interface BigNumberProps {
  /** As the domain writes it ("29.5", "1:40"); shown with the mark of the language; a dash where there is none yet. */
  readonly number: ReactNode;
  /** Small, after the number: "cm", "of 60". */
  readonly unit?: ReactNode;
  /** The meaning of the number, in a few words. */
  readonly label?: ReactNode;
  /** One quiet line under it: a stage, a difference, a hint. */
  readonly note?: ReactNode;
  /** row: in a list. sum: several on a screen. hero: the only one. */
  readonly size?: "row" | "sum" | "hero";
  readonly tone?: "plain" | "alert";
}

/** A number in large type: tabular figures, a small unit, one reading per glance. */
export function BigNumber({ number, unit, label, note, size = "sum", tone = "plain" }: BigNumberProps) {
  const show = useShowNumber();
  return (
    <Stack gap={1} top className={css.big} data-size={size} data-tone={tone}>
      {label !== undefined && <div className={`strong ${css.label}`}>{label}</div>}
      <div className={css.value}>
        <span className={`figures ${css.number}`}>{typeof number === "string" ? show(number) : number}</span>
        {unit !== undefined && <span className={`quiet ${css.unit}`}> {unit}</span>}
      </div>
      {note !== undefined && <div className={`quiet ${css.note}`}>{note}</div>}
    </Stack>
  );
}
