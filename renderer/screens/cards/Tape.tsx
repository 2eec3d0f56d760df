import type { ReactNode } from "react";
import css from "./Tape.module.css";

/** A strip of measuring tape, ticks along its lower edge: decoration, never a scale. */
export function Tape({ children }: { readonly children: ReactNode }) {
  return <div className={css.tape}>{children}</div>;
}
