import { useEffect } from "react";
import type { ReadMoment } from "../../../../../electron/domain/heats/start.ts";
import { client } from "../../../../app/client.tsx";
import { isUnanswered } from "../../../../app/trouble.ts";
import { timed } from "../../../../sound/clock.ts";
import { createTableClock } from "../../../../sound/table-clock.ts";

const clock = createTableClock();

/** Error of a reading that is certain enough, in ms: half the time of a quick answer. */
const sureMs = 4;
const looks = 9;
const betweenLooksMs = 250;
/** Looks that are left out between two that keep a reading fresh. */
const looksLeftOut = 60;

/** Asks the table what its clock shows. */
export async function readTableClock(heatId: string): Promise<void> {
  const { answer, askedAt, answeredAt } = await timed(() => client.heat.clock.query({ heatId }));
  clock.learn({ askedAt, answeredAt, shownMs: answer.ms }, answer.boot);
}

/** Returns a moment of this page, in ms of `performance.now()`, on the table's clock; null where that was not read. */
export function onTableClock(performanceMs: number): ReadMoment | null {
  return clock.at(performanceMs);
}

/**
 * Reads the table's clock while a heat is gathered here, so that its start can be said on it: several times until it is
 * certain, then now and then. Null: no heat that somebody can start.
 */
export function useTableClock(heatId: string | null): void {
  useEffect(() => {
    if (heatId === null) return;
    let look = 0;
    function ask(gathered: string): void {
      const isSure = (clock.at(performance.now())?.doubtMs ?? Number.POSITIVE_INFINITY) <= sureMs;
      const isDue = look < looks ? !isSure : look % looksLeftOut === 0;
      look += 1;
      if (isDue) readTableClock(gathered).catch(warnUnlessUnanswered);
    }
    ask(heatId);
    const timer = setInterval(ask, betweenLooksMs, heatId);
    return () => clearInterval(timer);
  }, [heatId]);
}

/** An answer that does not come is told by the table's line; the next look is soon. */
function warnUnlessUnanswered(error: unknown): void {
  if (!isUnanswered(error)) console.warn("The table's clock could not be read:", error);
}
