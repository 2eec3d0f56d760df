import type { ReactNode } from "react";
import css from "./Held.module.css";

interface MatterProps {
  readonly title: string;
  readonly what: string;
  readonly children: ReactNode;
}

/** One question with what to know and what to press. */
export function Matter({ title, what, children }: MatterProps) {
  return (
    <div className={css.matter}>
      <h3>{title}</h3>
      <p>{what}</p>
      <div className={css.ways}>{children}</div>
    </div>
  );
}
