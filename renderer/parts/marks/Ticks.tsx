import css from "./Ticks.module.css";

/** The edge of a measuring tape: a painted line with ticks at tenths, halves and wholes. Decoration, never a scale. */
export function Ticks() {
  return <div className={css.ticks} aria-hidden="true" />;
}
