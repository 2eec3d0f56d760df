import type { DayPlan, Wave } from "../../../../electron/domain/plan/told.ts";

/** A wave as the timetable lists it. */
export interface WaveLine extends Wave {
  readonly key: string;
  /** Which of its league's waves it is, from 1. */
  readonly place: number;
  readonly places: number;
}

/** Returns a plan's waves in the order in which they come, each with its place among those of its league. */
export function wavesOf({ waves }: Pick<DayPlan, "waves">): WaveLine[] {
  const inOrder = waves.toSorted((a, b) => a.at - b.at || a.league.localeCompare(b.league));
  return inOrder.map((wave) => {
    const own = inOrder.filter(({ league }) => league === wave.league);
    const place = own.indexOf(wave) + 1;
    return { ...wave, place, places: own.length, key: `${wave.league} ${place}` };
  });
}

/** Seconds that somebody is there before their first test from which on they could as well come later. */
const longBefore = 20 * 60;

/** Returns whether a wave stands about long before its first test can start. */
export function isEarlyForNothing({ waves }: Pick<DayPlan, "waves">): boolean {
  return waves.some(({ at, firstStart }) => firstStart.from - Math.max(0, at) >= longBefore);
}
