import css from "./Spread.module.css";

interface SpreadProps {
  readonly marks: readonly number[];
  readonly lower: number | null;
  readonly median: number | null;
  readonly upper: number | null;
}

/** The marks as ticks on one line, longer where several are equal, the middle half on tape. The figures stand beside it. */
export function Spread({ marks, lower, median, upper }: SpreadProps) {
  const least = Math.min(...marks);
  const range = Math.max(...marks) - least;
  const place = (mark: number) => (range === 0 ? 50 : ((mark - least) / range) * 100);
  const counts = new Map<number, number>();
  for (const mark of marks) counts.set(mark, (counts.get(mark) ?? 0) + 1);
  const most = Math.max(...counts.values());
  return (
    <svg className={css.spread} aria-hidden="true">
      <line className={css.line} x1="0" x2="100%" y1="50%" y2="50%" />
      {lower !== null && upper !== null && (
        <rect
          className={css.tape}
          x={`${place(lower)}%`}
          width={`${place(upper) - place(lower)}%`}
          y="15%"
          height="70%"
        />
      )}
      {[...counts].map(([mark, count]) => {
        const half = 12 + (count / most) * 28;
        const x = `${place(mark)}%`;
        return (
          <line key={mark} className={css.tick} x1={x} x2={x} y1={`${50 - half}%`} y2={`${50 + half}%`} />
        );
      })}
      {median !== null && (
        <line className={css.median} x1={`${place(median)}%`} x2={`${place(median)}%`} y1="5%" y2="95%" />
      )}
    </svg>
  );
}
