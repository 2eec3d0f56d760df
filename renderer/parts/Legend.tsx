import type { ReactNode } from "react";
import css from "./Legend.module.css";

interface LegendProps {
  /** What each sign means; `sign` may be a TestMark or a small SVG. */
  readonly entries: readonly { readonly key: string; readonly sign: ReactNode; readonly means: ReactNode }[];
}

/** What the signs of a screen mean, in one quiet line. */
export function Legend({ entries }: LegendProps) {
  return (
    <ul className={css.legend}>
      {entries.map((entry) => (
        <li key={entry.key}>
          {entry.sign}
          <span>{entry.means}</span>
        </li>
      ))}
    </ul>
  );
}
