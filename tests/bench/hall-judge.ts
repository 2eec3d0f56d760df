import { blockedBy, nextTest } from "../../electron/domain/queue/order.ts";
import { quantile } from "../../electron/domain/statistics/quantile.ts";
import { type TestCode, testCodes } from "../../electron/domain/tests/registry.ts";
import { openStore } from "../../electron/store/connection/open.ts";
import { everybodyInPublic } from "../../electron/store/reads/present.ts";
import { attemptsOfDay, type KeptAttempt } from "../../electron/store/tables/attempts.ts";
import type { Sent, Shown } from "./hall-page.ts";

/** What a screen painted when: a station's counts, or the number of tests done on a big screen. */
export type Screen = { readonly name: string } & (
  | { readonly is: "bare"; readonly counted: readonly { readonly count: number; readonly at: number }[] }
  | { readonly is: "station"; readonly test: TestCode; readonly shown: readonly Shown[] }
  | { readonly is: "board"; readonly counted: readonly { readonly count: number; readonly at: number }[] }
);

/** An entry with the moments at which everything was done that follows from it, in ms from its tap. */
export interface Timed {
  readonly tapAt: number;
  readonly savedMs: number;
  /** Until the last station's screen, and the last big screen, had painted it; null where it changes none. */
  readonly stationsMs: number | null;
  readonly boardsMs: number | null;
  /** Until each kind of screen had painted it, the last of that kind. */
  readonly byName: ReadonlyMap<string, number>;
}

export interface Kept {
  readonly attempts: readonly KeptAttempt[];
  /** Athletes whom the big screen does not show. */
  readonly hidden: ReadonlySet<number>;
}

/** Reads what a table's store holds once the program has ended. */
export function keptIn(file: string, dayId: number): Kept {
  const store = openStore({ file });
  const attempts = attemptsOfDay(store.db, dayId);
  const people = everybodyInPublic(store.db, dayId);
  store.close();
  return {
    attempts,
    hidden: new Set(people.filter(({ board }) => board === "hidden").map((each) => each.athleteId)),
  };
}

/** Ids that were acknowledged and are not kept, and kept ones that nobody sent or that are there twice. */
export function compareIds(sent: readonly Sent[], { attempts }: Kept): { lost: number; doubled: number } {
  const wanted = sent.flatMap(({ ids }) => ids);
  const there = new Set(attempts.map(({ id }) => id));
  const places = new Set(
    attempts.map(({ athleteId, test, slot, seen }) => JSON.stringify([athleteId, test, slot, seen])),
  );
  const unknown = attempts.filter(({ id }) => !wanted.includes(id)).length;
  const twice = attempts.length - places.size + wanted.length - new Set(wanted).size;
  return { lost: wanted.filter((id) => !there.has(id)).length, doubled: unknown + twice };
}

/** What one attempt changes on the screens: the counts of stations, and the tests done on the big ones. */
interface Change {
  readonly stations: ReadonlyMap<TestCode, { readonly done: number; readonly later: number }>;
  readonly count: number | null;
}

/**
 * Goes through the attempts in the order in which the table took them, and works out what each changes on the screens, by
 * the domain's own rule of the order of tests. `present`: how many are here to test.
 */
function changesOf({ attempts, hidden }: Kept, present: number): Map<string, Change> {
  const done = new Map<number, Set<TestCode>>();
  const slots = new Set<string>();
  const counts = new Map(
    testCodes.map((test) => [test, { done: 0, later: test === testCodes[0] ? 0 : present }]),
  );
  const changes = new Map<string, Change>();
  let count = 0;
  for (const { id, athleteId, test, slot } of attempts) {
    const own = done.get(athleteId) ?? new Set<TestCode>();
    done.set(athleteId, own);
    slots.add(`${athleteId} ${test} ${slot}`);
    const isWhole =
      test !== "agility" || ["cw", "ccw"].every((way) => slots.has(`${athleteId} agility ${way}`));
    if (!isWhole || own.has(test)) continue;
    const before = new Map(testCodes.map((each) => [each, placeOf(each, own)]));
    own.add(test);
    const stations = new Map<TestCode, { done: number; later: number }>();
    for (const each of testCodes) {
      const [was, is] = [before.get(each), placeOf(each, own)];
      const now = counts.get(each);
      if (was === is || now === undefined) continue;
      if (is === "done") now.done += 1;
      if (was === "later") now.later -= 1;
      stations.set(each, { ...now });
    }
    if (!hidden.has(athleteId)) count += 1;
    changes.set(id, { stations, count: hidden.has(athleteId) ? null : count });
  }
  return changes;
}

function placeOf(test: TestCode, done: ReadonlySet<TestCode>): "done" | "waiting" | "later" {
  if (done.has(test)) return "done";
  return nextTest(done, new Set()) === test && blockedBy(test, done, new Set()) === null
    ? "waiting"
    : "later";
}

/** Returns which of all entries each one was, from 1, by its first attempt, in the order in which the table took them. */
function orderOf(all: readonly Sent[], { attempts }: Kept): Map<string | undefined, number> {
  const places = new Map(attempts.map(({ id }, place) => [id, place]));
  const firsts = all
    .map(({ ids }) => ids[0])
    .sort((a = "", b = "") => (places.get(a) ?? 0) - (places.get(b) ?? 0));
  return new Map(firsts.map((id, index) => [id, index + 1]));
}

/**
 * Times each entry; those that change no screen are timed until they are saved.
 * @param all these entries and the table's own, which a bare page counts
 */
export function timesOf(
  sent: readonly Sent[],
  all: readonly Sent[],
  kept: Kept,
  screens: readonly Screen[],
  present: number,
): Timed[] {
  const changes = changesOf(kept, present);
  const order = orderOf(all, kept);
  return sent.map(({ ids, tapAt, savedAt }) => {
    const change = ids.map((id) => changes.get(id)).find((each) => each !== undefined);
    const painted =
      change === undefined
        ? []
        : screens.flatMap((each) => paintedAt(each, change).map((at) => ({ ...each, ms: at - tapAt })));
    const bare = screens.flatMap(({ name, ...each }) =>
      each.is === "bare"
        ? [{ name, is: each.is, ms: paintedFrom(each.counted, order.get(ids[0]) ?? 0) - tapAt }]
        : [],
    );
    const last = (own: readonly { readonly ms: number }[]) =>
      own.length === 0 ? null : Math.max(...own.map(({ ms }) => ms));
    const byName = Map.groupBy([...painted, ...bare], ({ name }) => name);
    return {
      tapAt,
      savedMs: savedAt - tapAt,
      stationsMs: last(painted.filter((each) => each.is === "station")),
      boardsMs: last(painted.filter((each) => each.is === "board")),
      byName: new Map([...byName].map(([name, own]) => [name, last(own) ?? 0])),
    };
  });
}

/** When a screen had painted a change; nothing where it doesn't show it, infinity where it never did. */
function paintedAt(screen: Screen, { stations, count }: Change): number[] {
  if (screen.is === "bare") return [];
  if (screen.is === "board") return count === null ? [] : [paintedFrom(screen.counted, count)];
  const wanted = stations.get(screen.test);
  if (wanted === undefined) return [];
  const painted = screen.shown.find(({ done, later }) => done >= wanted.done && later <= wanted.later);
  return [painted?.at ?? Number.POSITIVE_INFINITY];
}

/** When a count, or a later one, was painted; infinity where none was. */
function paintedFrom(
  counted: readonly { readonly count: number; readonly at: number }[],
  wanted: number,
): number {
  return counted.find(({ count }) => count >= wanted)?.at ?? Number.POSITIVE_INFINITY;
}

/** In ms. */
export interface Percentiles {
  readonly count: number;
  readonly p50: number;
  readonly p95: number;
  readonly p99: number;
}

/** Null without values. */
export function percentilesOf(values: readonly (number | null)[]): Percentiles | null {
  const there = values.filter((value) => value !== null);
  if (there.length === 0) return null;
  // Two that were never painted have no value between them.
  const at = (share: number) =>
    quantile(
      there.map((value) => Math.min(value, 1e9)),
      share,
    );
  return { count: there.length, p50: at(0.5), p95: at(0.95), p99: at(0.99) };
}
