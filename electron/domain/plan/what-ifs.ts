import type { Seed } from "../chance.ts";
import { quantile } from "../statistics/quantile.ts";
import { changed } from "./change.ts";
import { endsOf, type ManyDays, manyDays } from "./days.ts";
import { beginning } from "./floor.ts";
import type { Athlete, Hall, Known, Moment } from "./hall.ts";
import { type Calculation, within } from "./progress.ts";
import { wavesOf } from "./schedule/waves.ts";
import { meanOfAll, spanOf } from "./span.ts";
import type { Change, WhatIf } from "./told.ts";

/** Seconds of rest that a change takes away. */
const lessRest = 120;

/** What what-ifs are worked out from, besides a hall and its athletes. */
export interface WhatIfOptions {
  readonly known: readonly Known[];
  readonly seed: Seed;
  /** Number of simulated days, the same for all changes. */
  readonly days?: number;
  /** The changes to try; all that the organiser can make, where none are named. */
  readonly changes?: readonly Change[];
}

/** What one or two changes save on each of the same days. */
interface Tried {
  readonly changes: readonly Change[];
  readonly saved: readonly number[];
}

/**
 * Tries every change and every pair of changes on the same simulated days and returns what each saves, the most first.
 * Whoever calls the next athlete by a list can end later with more places than with fewer (Graham 1966, Bell System
 * Technical Journal 45), so of a change and its being left alone the better is told, and of a pair the best of both, one
 * and none: a change that helps nothing is told as nothing, and never as a delay.
 */
export function* whatIfs(
  hall: Hall,
  athletes: readonly Athlete[],
  { known, seed, days = 50, changes = allChanges(hall) }: WhatIfOptions,
): Calculation<WhatIf[]> {
  const all = yield* within(manyDays(beginning(hall, athletes), known, seed, days), 0, 0.02);
  const ends = yield* within(endsOf(all.moment, all.draws), 0.02, 0.04);
  const waves = changes.some(({ kind }) => kind === "waves")
    ? yield* within(bestWaves(hall, athletes, { known, seed }), 0.04, 0.1)
    : [];
  const tries = [...singles(changes), ...pairs(changes)];
  const tried: Tried[] = [];
  for (const [index, some] of tries.entries()) {
    const [from, until] = [0.1 + (0.9 * index) / tries.length, 0.1 + (0.9 * (index + 1)) / tries.length];
    const saved = yield* within(savedBy(some, all, ends, waves), from, until);
    if (saved !== null) tried.push({ changes: some, saved: better(saved, some, tried) });
  }
  return tried
    .toSorted((a, b) => meanOfAll(b.saved) - meanOfAll(a.saved))
    .map(({ changes: some, saved }) => ({ changes: some, saved: spanOf(saved) }));
}

/** Returns every change that is in the organiser's hand. */
function allChanges({ stations, judges, middleIsFree }: Hall): Change[] {
  return [
    ...stations.map(({ test }) => ({ kind: "place", test }) as const),
    ...stations.filter(({ lanes }) => lanes > 1).map(({ test }) => ({ kind: "lane", test }) as const),
    ...(judges === null ? [] : [{ kind: "judge" } as const]),
    { kind: "rest", lessSeconds: lessRest },
    ...(middleIsFree ? [] : [{ kind: "middle" } as const]),
    { kind: "waves" },
  ];
}

/** Days on which ways to arrive are tried; other ones than those on which the best of them is told. */
const daysOfWaves = 20;
/** A league may be asked to come at any moment of the day from its first arrival on, in seconds. */
const wholeDay = 86_400;

/** Returns everybody with the time to be there, as it is best for the day whatever was agreed with the leagues. */
function* bestWaves(
  hall: Hall,
  athletes: readonly Athlete[],
  { known, seed: [one, two, three, four] }: Pick<WhatIfOptions, "known" | "seed">,
): Calculation<readonly Athlete[]> {
  const from = athletes.reduce((first, { arrives }) => Math.min(first, arrives.from), wholeDay);
  const possible = new Map(athletes.map(({ league }) => [league, { from, until: wholeDay }]));
  const seed: Seed = [four, three, two, one];
  return (yield* wavesOf(hall, athletes, { known, seed, possible, days: daysOfWaves })).athletes;
}

function singles(changes: readonly Change[]): Change[][] {
  return changes.map((change) => [change]);
}

function pairs(changes: readonly Change[]): Change[][] {
  return changes.flatMap((one, index) => changes.slice(index + 1).map((other) => [one, other]));
}

function* savedBy(
  changes: readonly Change[],
  { moment, draws }: ManyDays,
  ends: readonly number[],
  waves: readonly Athlete[],
): Calculation<number[] | null> {
  const other = changes.reduce<Moment | null>((so, change) => so && changed(so, change, waves), moment);
  if (other === null) return null;
  const changedEnds = yield* endsOf(other, draws);
  return changedEnds.map((end, day) => (ends[day] ?? end) - end);
}

/** Returns what is saved most: by these changes, by one of them alone, or by none. */
function better(
  saved: readonly number[],
  changes: readonly Change[],
  tried: readonly Tried[],
): readonly number[] {
  const parts = tried.flatMap((each) => {
    const [only, ...more] = each.changes;
    return more.length === 0 && only !== undefined && changes.includes(only) ? [each.saved] : [];
  });
  const none = saved.map(() => 0);
  return [saved, ...parts].reduce((best, each) => (worthOf(each) > worthOf(best) ? each : best), none);
}

/** What a change is worth to somebody who is told its middle and has it many times: the less of the middle and the mean. */
function worthOf(saved: readonly number[]): number {
  return Math.min(meanOfAll(saved), quantile(saved, 0.5));
}
