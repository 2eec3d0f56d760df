import { judgesBind, type Schedule, type Shop } from "./shop.ts";

/** What of a shop's rules a schedule breaks. */
export type Breach = "arrival" | "rest" | "lanes" | "places" | "break" | "judges" | "left out";

/** The smallest difference that counts, in seconds: sums of fractions differ by less. */
const grain = 1e-6;

/** Athletes who start together at one place. */
interface Heat {
  readonly stage: number;
  readonly place: number;
  readonly from: number;
  /** When the place is free again, its judge too. */
  until: number;
  size: number;
}

/** Returns the first rule of a shop that a schedule breaks; null when it can be run there as it is. */
export function breachOf(shop: Shop, schedule: Schedule): Breach | null {
  return breachOfJobs(shop, schedule) ?? breachOfHeats(shop, heatsOf(shop, schedule));
}

function breachOfJobs({ jobs, stages, times, release, rest }: Shop, { starts }: Schedule): Breach | null {
  for (let job = 0; job < jobs; job += 1) {
    let [from, breach]: [number, Breach] = [release[job] ?? 0, "arrival"];
    for (let stage = 0; stage < stages; stage += 1) {
      const start = starts[job * stages + stage] ?? -1;
      const time = times[job * stages + stage] ?? -1;
      if (start < 0 !== time < 0) return "left out";
      if (time < 0) continue;
      if (start < from - grain) return breach;
      [from, breach] = [start + time + rest, "rest"];
    }
  }
  return null;
}

/** Returns a schedule's heats by place, in the order in which they start. */
function heatsOf({ jobs, stages, times, changeOver }: Shop, { starts, places }: Schedule): Heat[] {
  const heats = new Map<string, Heat>();
  for (let turn = 0; turn < jobs * stages; turn += 1) {
    const [from, place, stage] = [starts[turn] ?? -1, places[turn] ?? 0, turn % stages];
    if (from < 0) continue;
    const key = `${stage} ${place} ${from}`;
    const heat = heats.get(key) ?? { stage, place, from, until: from, size: 0 };
    heat.until = Math.max(heat.until, from + (times[turn] ?? 0) + (changeOver[stage] ?? 0));
    heat.size += 1;
    heats.set(key, heat);
  }
  return [...heats.values()].sort((a, b) => a.stage - b.stage || a.place - b.place || a.from - b.from);
}

function breachOfHeats(shop: Shop, heats: readonly Heat[]): Breach | null {
  if (heats.some(({ stage, size }) => size > (shop.lanes[stage] ?? 1))) return "lanes";
  if (heats.some(({ stage, place }) => place < 0 || place >= (shop.places[stage] ?? 1))) return "places";
  const overlap = heats.some((heat, at) => {
    const last = heats[at - 1];
    return last?.stage === heat.stage && last.place === heat.place && heat.from < last.until - grain;
  });
  if (overlap) return "places";
  if (heats.some(({ from }) => inBreak(shop, from))) return "break";
  return judgesBind(shop) && mostAtOnce(heats) > shop.judges ? "judges" : null;
}

function inBreak({ breaks }: Shop, from: number): boolean {
  return breaks.some((start, at) => at % 2 === 0 && from >= start && from < (breaks[at + 1] ?? 0) - grain);
}

function mostAtOnce(heats: readonly Heat[]): number {
  const counts = heats.map(
    ({ from }) => heats.filter((other) => other.from <= from + grain && other.until > from + grain).length,
  );
  return Math.max(0, ...counts);
}
