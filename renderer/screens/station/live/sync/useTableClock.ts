import { useEffect } from "react";
import type { ReadMoment } from "../../../../../electron/domain/heats/start.ts";
import { client } from "../../../../app/client.tsx";
import { isUnanswered } from "../../../../app/trouble.ts";
import { timed } from "../../../../sound/clock.ts";
import { createTableClock } from "../../../../sound/table-clock.ts";
import { settleFrom } from "./heatClocks.ts";

const clock = createTableClock();

/** Error of a reading that is certain enough, in ms: half the time of a quick answer. */
const sureMs = 4;
const looks = 9;
const betweenLooksMs = 250;
/** Looks that are left out between two that keep a reading fresh. */
const looksLeftOut = 60;

/** Asks the table what its clock shows, and that of a heat. */
export async function readTableClock(heatId: string): Promise<void> {
  const { answer, ...times } = await timed(() => client.heat.clock.query({ heatId }));
  clock.learn({ ...times, shownMs: answer.ms }, answer.boot);
  settleFrom(heatId, answer, times);
}

/** Looks once more; an answer that does not come is told by the table's line, and the next look is soon. */
export function lookAtTableClock(heatId: string): void {
  readTableClock(heatId).catch((error: unknown) => {
    if (!isUnanswered(error)) console.warn("The table's clock could not be read:", error);
  });
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
      if (isDue) lookAtTableClock(gathered);
    }
    ask(heatId);
    const timer = setInterval(ask, betweenLooksMs, heatId);
    return () => clearInterval(timer);
  }, [heatId]);
}
