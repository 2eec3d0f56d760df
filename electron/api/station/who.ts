import { blockedBy } from "../../domain/queue/order.ts";
import { isDone, type QueuePlace } from "../../domain/queue/queue.ts";
import { Refusal } from "../../domain/refusal.ts";
import type { TestCode } from "../../domain/tests/registry.ts";
import { parseCount } from "../../domain/units.ts";
import { sentence } from "../../domain/words.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { type Present, presentByBib, presentById } from "../../store/reads/present.ts";
import type { Day } from "../../store/tables/days.ts";
import { leftOutOf } from "../../store/tables/entrants.ts";
import { marksOfAthlete } from "../../store/tables/marks.ts";
import { queueOf } from "./runners.ts";

/** Returns an athlete of today's list. @throws Refusal `not-found` when the athlete is not on it. */
export function requirePresent(db: ReadableDb, day: Day, athleteId: number): Present {
  const who = presentById(db, day.id, athleteId);
  if (who === undefined) throw new Refusal("not-found", sentence("station.notListed"));
  return who;
}

/**
 * Finds the athlete with a scanned or typed bib.
 * @throws Refusal `bad-input` when it is no number, `not-found` when nobody wears it.
 */
export function requireBib(db: ReadableDb, day: Day, typed: string): Present {
  const read = parseCount(typed);
  if (!("count" in read)) throw new Refusal("bad-input", sentence("station.badBib"));
  const who = presentByBib(db, day.id, read.count);
  if (who === undefined) throw new Refusal("not-found", sentence("station.noBib", { bib: read.count }));
  return who;
}

/**
 * Refuses an athlete who does not test today, or skips this test; returns the tests that they skip.
 * @throws Refusal `conflict`, with what to do
 */
export function requireTesting(
  db: ReadableDb,
  day: Day,
  { athleteId, name, state }: Pick<Present, "athleteId" | "name" | "state">,
  test: TestCode,
): ReadonlySet<TestCode> {
  if (state !== "testing") throw new Refusal("conflict", sentence(`station.state.${state}`, { name }));
  const skipped = leftOutOf(db, day.id, athleteId);
  const left = skipped.find((each) => each.test === test);
  // Without the reason, which only the organiser may know.
  if (left !== undefined) throw new Refusal("conflict", sentence(`station.leftOut.${left.kind}`, { name }));
  return testsIn(skipped);
}

/** Returns the tests that an athlete has done today. */
export function doneBy(db: ReadableDb, day: Day, athleteId: number): ReadonlySet<TestCode> {
  return testsIn(marksOfAthlete(db, day.id, athleteId).filter(({ mark }) => isDone(mark)));
}

function testsIn(all: readonly { readonly test: TestCode }[]): ReadonlySet<TestCode> {
  return new Set(all.map(({ test }) => test));
}

function skippedBy(db: ReadableDb, day: Day, athleteId: number): ReadonlySet<TestCode> {
  return testsIn(leftOutOf(db, day.id, athleteId));
}

/** Returns the test that an athlete must do or skip before `test`, or null. */
export function firstBefore(db: ReadableDb, day: Day, athleteId: number, test: TestCode): TestCode | null {
  return blockedBy(test, doneBy(db, day, athleteId), skippedBy(db, day, athleteId));
}

/** Holds an athlete to the order of the tests. @throws Refusal `conflict` that names the test to do first. */
export function requireTurn(db: ReadableDb, day: Day, who: Present, test: TestCode): void {
  const before = firstBefore(db, day, who.athleteId, test);
  if (before !== null) throw new Refusal("conflict", sentence(`test.${before}.first`, { name: who.name }));
}

/** Refuses an athlete who still rests from the test before. @throws Refusal `conflict` with the minutes left. */
export function requireRested(db: ReadableDb, day: Day, who: Present, test: TestCode, now: string): void {
  const readyAt = queueOf(db, day, test, now).find(({ athleteId }) => athleteId === who.athleteId)?.readyAt;
  if (readyAt === undefined || readyAt <= now) return;
  throw new Refusal("conflict", sentence("heat.rests", { name: who.name, count: minutesTo(readyAt, now) }));
}

/** Returns why nobody can be called: the queue is empty, or everyone still rests (`resting`: the first to be ready). */
export function nobodyToCall(resting: Pick<QueuePlace, "bib" | "readyAt"> | null, now: string): Refusal {
  if (resting === null) return new Refusal("conflict", sentence("station.nobodyWaits"));
  const values = { bib: resting.bib, count: minutesTo(resting.readyAt, now) };
  return new Refusal("conflict", sentence("station.allRest", values));
}

function minutesTo(instant: string, now: string): number {
  return Math.ceil((Date.parse(instant) - Date.parse(now)) / 60_000);
}
