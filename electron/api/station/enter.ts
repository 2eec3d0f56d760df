import { z } from "zod";
import { clockPattern } from "../../domain/day/clock.ts";
import { nextTest } from "../../domain/queue/order.ts";
import { isDone } from "../../domain/queue/queue.ts";
import { Refusal } from "../../domain/refusal.ts";
import type { Variation } from "../../domain/statistics/variation.ts";
import { judge } from "../../domain/tests/judge.ts";
import {
  parseAttempt,
  protocolOf,
  refusalOf,
  type TestCode,
  testCodes,
} from "../../domain/tests/registry.ts";
import { type Sentence, sentence } from "../../domain/words.ts";
import type { ReadableDb, WritableDb } from "../../store/connection/database.ts";
import { attemptById, dayIdOfAttempt } from "../../store/tables/attempts.ts";
import { endCallTo } from "../../store/tables/calls.ts";
import { type Day, dayById } from "../../store/tables/days.ts";
import { type Derived, type KeptMark, marksOfTest, parametersOf } from "../../store/tables/marks.ts";
import { recordTogether, voidAttempt } from "../../store/tables/record.ts";
import { requireOpenDay } from "../door/at-hand.ts";
import { lastClock } from "../door/calendar.ts";
import type { Desk } from "../door/desk.ts";
import { initialsSchema, reasonSchema } from "../door/said.ts";
import { lengthsSchema, sentenceSchema, type Told, testSchema, toldSchema } from "../door/shapes.ts";
import { toldOf } from "../marks/attempts.ts";
import { tellMark } from "../marks/marks.ts";
import { variationsOf } from "../noise/errors.ts";
import { askAboutChange, askAboutVariant } from "./asked.ts";
import { requirePresent, requireTesting } from "./who.ts";

/** Made by the client; or by a heat, for a result that a device hands in to a table that lost it. */
const attemptIdSchema = z.union([z.uuid(), z.string().regex(/^heat\.[\w.-]{38,95}$/)]);

/** An entry at a station: one or more attempts of one athlete that belong together. */
export const entrySchema = z.object({
  athleteId: z.int(),
  test: testSchema,
  variant: z.string().max(20).default(""),
  attempts: z
    .array(z.object({ id: attemptIdSchema, seen: z.unknown() }))
    .min(1)
    .max(10)
    .refine((attempts) => new Set(attempts.map(({ id }) => id)).size === attempts.length),
  by: initialsSchema,
  note: z.string().max(500).default(""),
  /** It was written on paper and done earlier: at this time of day ("09:05"), or null where the paper has none. */
  paper: z.object({ at: z.string().regex(clockPattern).nullable() }).exactOptional(),
  /** True once the volunteer has answered "sure?" with yes. */
  sure: z.boolean(),
  /** For a correction: the attempt to void, and the reason. */
  replaces: z.object({ attemptId: z.string().max(100), reason: reasonSchema }).optional(),
  /** The unit of lengths in the answer. */
  lengths: lengthsSchema,
});

export const enteredSchema = z.discriminatedUnion("outcome", [
  /** Nothing was written yet. */
  z.object({ outcome: z.literal("ask"), questions: z.array(sentenceSchema).min(1) }),
  /** Null only when a retry comes after the attempt was voided. */
  z.object({ outcome: z.literal("saved"), told: toldSchema.nullable() }),
]);

export type Entry = z.infer<typeof entrySchema>;
type Entered = z.infer<typeof enteredSchema>;

/** Carries the questions out of the transaction, which is rolled back. Never leaves this file. */
class NotSure extends Error {
  readonly questions: readonly Sentence[];
  constructor(questions: readonly Sentence[]) {
    super("not sure");
    this.questions = questions;
  }
}

/**
 * Enters attempts or corrects one, in one transaction with the mark. Doubtful ones raise questions first, and then
 * nothing is written. The same ids again get the same answer.
 * @throws Refusal with what to do; nothing is written then either.
 */
export function enter(desk: Desk, typed: Entry): Entered {
  const entry = readEntry(typed);
  try {
    const { told } = desk.store.write(
      ["attempts", "calls"],
      (db) => save(db, desk.now().toISOString(), entry),
      ({ tests }) => tests,
    );
    return { outcome: "saved", told };
  } catch (error) {
    if (error instanceof NotSure) return { outcome: "ask", questions: [...error.questions] };
    throw error;
  }
}

/** Parses the part that needs no store: the attempts' shapes. */
function readEntry(typed: Entry): Entry {
  if (!protocolOf(typed.test).variants.includes(typed.variant)) {
    throw new Refusal("bad-input", sentence("station.variant"));
  }
  const attempts = typed.attempts.map(({ id, seen }) => {
    const parsed = parseAttempt(typed.test, seen);
    if (!parsed.success) throw new Refusal("bad-input", refusalOf(parsed.error));
    return { id, seen: parsed.data };
  });
  return { ...typed, attempts };
}

/** What an entry comes to; `tests`: those whose stations it changes, undefined for any. */
interface Saved {
  readonly told: Told | null;
  readonly tests: readonly TestCode[] | undefined;
}

function save(db: WritableDb, at: string, entry: Entry): Saved {
  const retried = dayOfRetry(db, entry);
  return retried === undefined
    ? saveNew(db, requireOpenDay(db), at, entry)
    : saveAgain(db, retried, at, entry);
}

/** Gives a retry the answer that got lost. */
function saveAgain(db: WritableDb, day: Day, at: string, entry: Entry): Saved {
  const variation = variationsOf(db, day.id)[entry.test];
  endLate(db, day, at, entry);
  const { mark } = record(db, day, at, entry);
  return { told: toldIn(db, day, mark, entry, variation), tests: undefined };
}

function saveNew(db: WritableDb, day: Day, at: string, entry: Entry): Saved {
  // Read before anything is written: earlier data alone judges this entry.
  const variation = variationsOf(db, day.id)[entry.test];
  const before = marksOfTest(db, day.id, entry.athleteId, entry.test);
  const { questions, skipped } = takeUp(db, day, at, entry);
  const { mark, ofDay } = record(db, day, at, entry);
  const told = toldIn(db, day, mark, entry, variation);
  const was = before.find(({ variant }) => variant === entry.variant)?.mark ?? null;
  const all = [...questions, ...askAboutChange(entry, was, told, variation.error)];
  if (!entry.sure && all.length > 0) throw new NotSure(all);
  // The attempt that is corrected may be another athlete's.
  if (entry.replaces !== undefined) return { told, tests: undefined };
  // The athlete who was called to this test has come.
  endCallTo(db, day.id, entry.athleteId, entry.test);
  const done = new Set(ofDay.filter(isDone).map(({ test }) => test));
  const doneBefore = new Set(done);
  if (!before.some(({ mark: kept }) => isDone(kept))) doneBefore.delete(entry.test);
  return { told, tests: testsIn([entry.test, nextTest(doneBefore, skipped), nextTest(done, skipped)]) };
}

function toldIn(
  db: ReadableDb,
  day: Day,
  mark: KeptMark | null,
  { lengths }: Entry,
  variation: Variation,
): Told | null {
  return mark === null ? null : toldOf(tellMark(db, day, mark, variation), lengths);
}

/** Records the attempts of an entry; returns the mark that they make. */
function record(db: WritableDb, day: Day, at: string, entry: Entry): Derived {
  const { by: enteredBy, note } = entry;
  const performed = performedAt(entry.paper, at);
  const common = { note, at, performed, enteredBy, replaces: entry.replaces?.attemptId ?? null };
  const attempts = entry.attempts.map((each) => ({ ...common, ...each, source: "station" as const }));
  return recordTogether(db, day.id, entry, attempts);
}

/** Returns when an entry was done; null where nobody knows. @throws Refusal `bad-input` for a time that can't be */
function performedAt(paper: Entry["paper"], now: string): string | null {
  if (paper === undefined) return now;
  if (paper.at === null) return null;
  const performed = lastClock(paper.at, now);
  if (performed === null) throw new Refusal("bad-input", sentence("station.notSince"));
  return performed;
}

/**
 * Returns the stations at which an entry is seen: its own, and those in whose queue its athlete was and is. At any other
 * the athlete is where they were: done, left out, or with tests to do before it.
 */
function testsIn(seen: readonly (TestCode | null)[]): TestCode[] {
  return testCodes.filter((test) => seen.includes(test));
}

/** Returns the day of an entry whose ids are all known: it was saved before, and the answer got lost. */
function dayOfRetry(db: ReadableDb, entry: Entry): Day | undefined {
  const days = entry.attempts.map(({ id }) => dayIdOfAttempt(db, id));
  const [first] = days;
  return first === undefined || days.includes(undefined) ? undefined : dayById(db, first);
}

/**
 * Ends what a known correction corrects, where that still stands: after the table came back from an earlier backup the
 * correction may have come before it, by way of another device.
 */
function endLate(db: WritableDb, day: Day, at: string, { replaces, test, by }: Entry): void {
  const corrected = replaces === undefined ? undefined : attemptById(db, replaces.attemptId);
  if (corrected === undefined || replaces === undefined || corrected.void !== null) return;
  if (day.state !== "open" || corrected.dayId !== day.id || corrected.test !== test) return;
  voidAttempt(db, corrected.id, { reason: replaces.reason, by, at });
}

/** The questions to ask before an entry is saved, and the tests that its athlete skips. */
interface TakenUp {
  readonly questions: readonly Sentence[];
  readonly skipped: ReadonlySet<TestCode>;
}

/** Checks that the entry is allowed, and voids the attempt it corrects. */
function takeUp(db: WritableDb, day: Day, at: string, entry: Entry): TakenUp {
  const parameters = parametersOf(db, day.id, entry.test);
  const seen = entry.attempts.map((attempt) => attempt.seen);
  const { refusal, questions } = judge(entry.test, parameters, seen);
  if (refusal !== null) throw new Refusal("bad-input", refusal);
  const who = requirePresent(db, day, entry.athleteId);
  const corrected = entry.replaces === undefined ? null : voidCorrected(db, day, at, entry);
  // Correcting an athlete's own slip is always right, whatever has become of them since. The order of the tests is not
  // looked at: what is keyed has been done already, and piles of paper come as they come. Calls and heats hold it.
  const own = corrected?.athleteId === who.athleteId;
  const skipped = own ? new Set<TestCode>() : requireTesting(db, day, who, entry.test);
  return { questions: [...questions, ...askAboutVariant(db, day, entry)], skipped };
}

function voidCorrected(db: WritableDb, day: Day, at: string, entry: Entry): { athleteId: number } {
  const { attemptId = "", reason = "" } = entry.replaces ?? {};
  const attempt = attemptById(db, attemptId);
  if (attempt === undefined) throw new Refusal("not-found", sentence("record.unknownAttempt"));
  if (attempt.dayId !== day.id || attempt.test !== entry.test) {
    throw new Refusal("conflict", sentence("station.otherAttempt"));
  }
  if (attempt.void !== null) {
    throw new Refusal("conflict", sentence("station.alreadyVoid", { by: attempt.void.by }));
  }
  voidAttempt(db, attemptId, { reason, by: entry.by, at });
  return { athleteId: attempt.athleteId };
}
