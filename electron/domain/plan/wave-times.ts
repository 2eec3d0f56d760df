import type { DayState } from "./day-state.ts";
import type { Athlete } from "./hall.ts";
import { at } from "./numbers.ts";
import { spanOf } from "./span.ts";
import type { Wave } from "./told.ts";

/** When the first of a wave started and the last was done on one simulated day, by wave. */
export type WaveTimes = ReadonlyMap<string, { first: number; last: number }>;

/** A wave is who comes of one league in one window. */
function waveOf({ league, arrives }: Athlete): string {
  return JSON.stringify([league, arrives.from]);
}

/** Returns the waves' times of one simulated day. Who did not come is in none. */
export function waveTimes({ floor, starts, ends }: DayState): WaveTimes {
  const times = new Map<string, { first: number; last: number }>();
  for (let row = 0; row < starts.length; row += 1) {
    const athlete = floor.athletes[Math.floor(row / floor.stations)];
    if (athlete === undefined || Number.isNaN(at(starts, row))) continue;
    const wave = waveOf(athlete);
    const before = times.get(wave);
    times.set(wave, {
      first: Math.min(before?.first ?? Number.POSITIVE_INFINITY, at(starts, row)),
      last: Math.max(before?.last ?? 0, at(ends, row)),
    });
  }
  return times;
}

/** Returns the waves of a roster, in the order in which they are to be there; those that never came on any day are left out. */
export function wavesFrom(athletes: readonly Athlete[], days: readonly WaveTimes[]): Wave[] {
  const waves = [...Map.groupBy(athletes, waveOf)].flatMap(([wave, some]): Wave[] => {
    const times = days.flatMap((day) => day.get(wave) ?? []);
    const [one] = some;
    if (one === undefined || times.length === 0) return [];
    return [
      {
        ...{ league: one.league, athletes: some.map(({ id }) => id), at: one.arrives.from },
        firstStart: spanOf(times.map(({ first }) => first)),
        lastDone: spanOf(times.map(({ last }) => last)),
      },
    ];
  });
  return waves.sort((a, b) => a.at - b.at);
}
