import type { Schedule, Shop } from "./shop.ts";

/** Athletes who start together, by their turns. */
interface Heat {
  readonly turns: number[];
  readonly from: number;
}

/**
 * Returns the latest start of each turn with which the day would end no later: who starts with whom, where and after whom
 * stays. Judges are left out of it. Below 0 where a test is left out.
 */
export function latestStarts(shop: Shop, schedule: Schedule): Float64Array {
  const { stages, times, rest } = shop;
  const latest = new Float64Array(schedule.starts.length).fill(-1);
  // Until when each place may be in use, and each job's turn before may last.
  const placeUntil = new Map<string, number>();
  const jobUntil = new Float64Array(shop.jobs).fill(schedule.end);
  for (const { turns } of heatsOf(shop, schedule).sort((a, b) => b.from - a.from)) {
    const stage = (turns[0] ?? 0) % stages;
    const place = `${stage} ${schedule.places[turns[0] ?? 0]}`;
    const slowest = Math.max(...turns.map((turn) => times[turn] ?? 0));
    const bounds = turns.map((turn) => (jobUntil[jobOf(turn, stages)] ?? 0) - (times[turn] ?? 0));
    const at = beforeBreaks(shop, Math.min((placeUntil.get(place) ?? schedule.end) - slowest, ...bounds));
    placeUntil.set(place, at - (shop.changeOver[stage] ?? 0));
    for (const turn of turns) {
      latest[turn] = at;
      jobUntil[jobOf(turn, stages)] = at - rest;
    }
  }
  return latest;
}

function jobOf(turn: number, stages: number): number {
  return Math.floor(turn / stages);
}

function heatsOf({ stages }: Shop, { starts, places }: Schedule): Heat[] {
  const turns = [...starts.keys()].filter((turn) => (starts[turn] ?? -1) >= 0);
  const heats = Map.groupBy(turns, (turn) => `${turn % stages} ${places[turn]} ${starts[turn]}`);
  return [...heats.values()].map((some) => ({ turns: some, from: starts[some[0] ?? 0] ?? 0 }));
}

/** Returns the last moment until `time` at which a heat may start. */
function beforeBreaks({ breaks }: Shop, time: number): number {
  const inside = breaks.findIndex((from, at) => at % 2 === 0 && time >= from && time < (breaks[at + 1] ?? 0));
  return inside < 0 ? time : (breaks[inside] ?? 0) - 1;
}
