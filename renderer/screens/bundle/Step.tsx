import { type ReactNode, useId } from "react";
import { Ticks } from "../../parts/Ticks.tsx";
import css from "./Step.module.css";

interface StepProps {
  /** Painted large beside the step; left out where there is nothing to go through in order. */
  readonly number?: number;
  readonly title: string;
  readonly children: ReactNode;
}

/** One step of several on a page, under a measured line. */
export function Step({ number, title, children }: StepProps) {
  const id = useId();
  return (
    <section className={css.step} aria-labelledby={id}>
      <Ticks />
      <header className={css.head}>
        {number !== undefined && <span className={css.number}>{number}</span>}
        <h2 id={id}>{title}</h2>
      </header>
      {children}
    </section>
  );
}
