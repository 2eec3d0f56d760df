import css from "./BeforeAfter.module.css";
import type { Preview } from "./preview.ts";
import { useBounds } from "./words.ts";

type Test = Preview["tests"][number];

const height = { ticks: 18, bars: 44 };

/** Draws a test's marks twice: the exact ones as ticks above, the file's parts as bars with their counts below. */
export function BeforeAfter({ test }: { readonly test: Test }) {
  const boundsOf = useBounds();
  const { marks, parts } = test;
  const least = Math.min(...marks);
  const range = Math.max(Math.max(...marks) - least, 1);
  const place = (mark: number) => 4 + (92 * (mark - least)) / range;
  const most = Math.max(...parts.map(({ n }) => n));
  return (
    <div className={css.picture} aria-hidden="true">
      <svg className={css.ticks} height={height.ticks} aria-hidden="true">
        {[...new Set(marks)].map((mark) => (
          <line
            key={mark}
            className={css.tick}
            x1={`${place(mark)}%`}
            x2={`${place(mark)}%`}
            y1="2"
            y2="100%"
          />
        ))}
      </svg>
      <div className={css.bars} style={{ height: height.bars }}>
        {parts.map((part) => {
          const from = part.low === null ? 0 : place(part.low);
          const to = part.high === null ? 100 : place(part.high);
          return (
            <div
              key={boundsOf(part)}
              className={`small strong ${css.bar}`}
              data-end={part.low === null ? "low" : part.high === null ? "high" : "none"}
              style={{ left: `${from}%`, width: `${to - from}%`, height: `${(100 * part.n) / most}%` }}
            >
              {part.n}
            </div>
          );
        })}
      </div>
      <div className={`small quiet ${css.lines}`}>
        {linesOf(parts).map((line) => (
          <span key={line} className={css.line} style={{ left: `${place(line)}%` }}>
            {line}
          </span>
        ))}
      </div>
    </div>
  );
}

/** Returns each bound once, and only the outer ones where two would overlap. */
function linesOf(parts: Test["parts"]): number[] {
  const lines = [...new Set(parts.flatMap(({ low, high }) => [low, high]))].filter((line) => line !== null);
  return lines.length <= 6 ? lines : [Math.min(...lines), Math.max(...lines)];
}
