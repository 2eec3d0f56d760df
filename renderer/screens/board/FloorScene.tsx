import type { Board } from "../../../electron/api/board/schemas.ts";
import { Calls } from "./Calls.tsx";
import css from "./FloorScene.module.css";
import { OnNow } from "./OnNow.tsx";
import { useTotals } from "./totals.ts";

/**
 * Shows the whole floor: the totals of the athletes shown, who is in running heats, and each station's calls, by name
 * where that was agreed.
 */
export function FloorScene({ calls, heats, totals }: Pick<Board, "calls" | "heats" | "totals">) {
  const told = useTotals()(totals);
  const [news, ...others] = [...told.news, ...told.done];
  return (
    <div className={css.floor}>
      <section className={css.totals}>
        {news !== undefined && (
          <p className={`strong ${css.news}`}>
            <strong>{news.number}</strong> <span>{news.words}</span>
          </p>
        )}
        <OnNow heats={heats} />
        <div className={`quiet ${css.others}`} data-count={others.length}>
          {others.map(({ number, words }) => (
            <p key={words}>
              <strong>{number}</strong> {words}
            </p>
          ))}
        </div>
      </section>
      <Calls calls={calls} />
    </div>
  );
}
