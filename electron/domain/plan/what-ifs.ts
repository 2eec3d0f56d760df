import type { Seed } from "../chance.ts";
import { quantile } from "../statistics/quantile.ts";
import { changed } from "./change.ts";
import type { DayState } from "./day-state.ts";
import { eachDay, manyDays } from "./days.ts";
import { beginning } from "./floor.ts";
import type { Athlete, Hall, Known, Moment } from "./hall.ts";
import { type Calculation, within } from "./progress.ts";
import { bestWaves, leagueTimes } from "./schedule/league-times.ts";
import { meanOfAll, spanOf } from "./span.ts";
import type { Change, WhatIf } from "./told.ts";
import { waitsIn } from "./turns.ts";

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

/** What one or two changes save on each of the same days, and at which times leagues come then. */
interface Tried extends Pick<WhatIf, "changes" | "waves"> {
  readonly saved: readonly number[];
}

/** A simulated day's end, and how long athletes wait in it on average, in seconds. */
interface Held {
  readonly end: number;
  readonly wait: number;
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
  const given = yield* within(eachDay(all.moment, all.draws, heldOf), 0.02, 0.04);
  const waves = changes.some(isWaves) ? yield* within(bestWaves(hall, athletes, known, seed), 0.04, 0.1) : [];
  const tries = [...singles(changes), ...pairs(changes)];
  const tried: Tried[] = [];
  for (const [index, some] of tries.entries()) {
    const other = some.reduce<Moment | null>((so, change) => so && changed(so, change, waves), all.moment);
    if (other === null) continue;
    const [from, until] = [0.1 + (0.9 * index) / tries.length, 0.1 + (0.9 * (index + 1)) / tries.length];
    const held = yield* within(eachDay(other, all.draws, heldOf), from, until);
    tried.push(triedOf(some, { given, held, waves }, tried));
  }
  return tried
    .toSorted((a, b) => meanOfAll(b.saved) - meanOfAll(a.saved))
    .map((each) => ({ ...each, saved: spanOf(each.saved) }));
}

function heldOf(state: DayState): Held {
  return { end: state.end, wait: waitsIn(state).mean };
}

function isWaves({ kind }: Change): boolean {
  return kind === "waves";
}

/** The days as given and with changes made, and all athletes as they come in waves. */
interface Days {
  readonly given: readonly Held[];
  readonly held: readonly Held[];
  readonly waves: readonly Athlete[];
}

/** Seconds by which a day may end later and is told as no later: what is told are whole minutes. */
const halfMinute = 30;

function triedOf(changes: readonly Change[], { given, held, waves }: Days, tried: readonly Tried[]): Tried {
  const saved = given.map(({ end }, day) => end - (held[day]?.end ?? end));
  const told = { changes, saved: better(saved, changes, tried) };
  if (!changes.some(isWaves) || worthOf(saved) <= -halfMinute) return told;
  const waitOf = (days: readonly Held[]) => meanOfAll(days.map(({ wait }) => wait));
  return { ...told, waves: { times: leagueTimes(waves), wait: waitOf(held), waitAsGiven: waitOf(given) } };
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

function singles(changes: readonly Change[]): Change[][] {
  return changes.map((change) => [change]);
}

function pairs(changes: readonly Change[]): Change[][] {
  return changes.flatMap((one, index) => changes.slice(index + 1).map((other) => [one, other]));
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
