import { z } from "zod";
import { clockPattern } from "../../domain/day/clock.ts";
import { Refusal } from "../../domain/refusal.ts";
import type { TypicalError } from "../../domain/statistics/change.ts";
import { judge } from "../../domain/tests/judge.ts";
import type { Mark } from "../../domain/tests/protocol.ts";
import {
  parseAttempt,
  protocolOf,
  refusalOf,
  type TestCode,
  testCodes,
} from "../../domain/tests/registry.ts";
import { againstLast } from "../../domain/tests/written.ts";
import { type Sentence, sentence } from "../../domain/words.ts";
import type { ReadableDb, WritableDb } from "../../store/connection/database.ts";
import { attemptById, standingAttempts } from "../../store/tables/attempts.ts";
import { endCallTo } from "../../store/tables/calls.ts";
import { type Day, dayById } from "../../store/tables/days.ts";
import { marksOfAthlete, parametersOf } from "../../store/tables/marks.ts";
import { recordAttempt, voidAttempt } from "../../store/tables/record.ts";
import { requireOpenDay } from "../door/at-hand.ts";
import { lastClock } from "../door/calendar.ts";
import type { Desk } from "../door/desk.ts";
import { initialsSchema, reasonSchema } from "../door/said.ts";
import { lengthsSchema, sentenceSchema, type Told, testSchema, toldSchema } from "../door/shapes.ts";
import { tellOne } from "../marks/attempts.ts";
import { variationsOf } from "../noise/errors.ts";
import { nextOf, requirePresent, requireTesting } from "./who.ts";

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
  const day = retried ?? requireOpenDay(db);
  // Read before anything is written: earlier data alone judges this entry.
  const variations = variationsOf(db, day.id);
  const before = markNow(db, day, entry);
  const nextBefore = nextOf(db, day, entry.athleteId);
  if (retried !== undefined) endLate(db, day, at, entry);
  const questions = retried === undefined ? takeUp(db, day, at, entry) : [];
  const performed = performedAt(entry.paper, at);
  for (const { id, seen } of entry.attempts) {
    const { athleteId, test, variant, by, note } = entry;
    const replaces = entry.replaces?.attemptId ?? null;
    recordAttempt(db, day.id, {
      ...{ id, athleteId, test, variant, seen, note, at, performed, replaces },
      enteredBy: by,
      source: "station",
    });
  }
  const told = tellOne(db, day, entry, entry.lengths, variations);
  if (retried !== undefined) return { told, tests: undefined };
  const all = [...questions, ...askAboutChange(entry, before, told, variations[entry.test].error)];
  if (!entry.sure && all.length > 0) throw new NotSure(all);
  // The athlete who was called to this test has come.
  if (entry.replaces === undefined) endCallTo(db, day.id, entry.athleteId, entry.test);
  // The attempt that is corrected may be another athlete's.
  const tests = entry.replaces === undefined ? [nextBefore, nextOf(db, day, entry.athleteId)] : undefined;
  return { told, tests: tests === undefined ? undefined : testsIn([entry.test, ...tests]) };
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
  const known = entry.attempts.map(({ id }) => attemptById(db, id));
  const [first] = known;
  return first === undefined || known.includes(undefined) ? undefined : dayById(db, first.dayId);
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

/** Checks that the entry is allowed, voids the attempt it corrects, and returns the questions to ask first. */
function takeUp(db: WritableDb, day: Day, at: string, entry: Entry): readonly Sentence[] {
  const parameters = parametersOf(db, day.id, entry.test);
  const seen = entry.attempts.map((attempt) => attempt.seen);
  const { refusal, questions } = judge(entry.test, parameters, seen);
  if (refusal !== null) throw new Refusal("bad-input", refusal);
  const who = requirePresent(db, day, entry.athleteId);
  const corrected = entry.replaces === undefined ? null : voidCorrected(db, day, at, entry);
  // Correcting an athlete's own slip is always right, whatever has become of them since. The order of the tests is not
  // looked at: what is keyed has been done already, and piles of paper come as they come. Calls and heats hold it.
  if (corrected?.athleteId !== who.athleteId) requireTesting(db, day, who, entry.test);
  return [...questions, ...askAboutVariant(db, day, entry)];
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

/** Asks about a second variant on one day, which is possible but more often a slip. */
function askAboutVariant(db: ReadableDb, day: Day, entry: Entry): Sentence[] {
  const standing = standingAttempts(db, day.id, entry.athleteId, entry.test);
  const other = standing.find(({ variant }) => variant !== entry.variant);
  return other === undefined
    ? []
    : [sentence(`station.otherVariant.${other.variant}`, { by: other.enteredBy })];
}

/** Returns the mark that an entry adds to or changes, as it stands; null without one. */
function markNow(db: ReadableDb, day: Day, { athleteId, test, variant }: Entry): Mark | null {
  const marks = marksOfAthlete(db, day.id, athleteId);
  return marks.find((kept) => kept.test === test && kept.variant === variant)?.mark ?? null;
}

/** Asks about a mark far from the athlete's last; once per mark. */
function askAboutChange(
  entry: Entry,
  before: Mark | null,
  after: Told | null,
  error: TypicalError,
): Sentence[] {
  const previous = after?.news?.previous ?? null;
  if (after?.mark.state !== "complete" || previous === null) return [];
  if (before?.state === "complete" && before.value === after.mark.value) return [];
  const opinion = againstLast(entry.test, previous, after.mark.value, entry.lengths, error);
  return opinion.level === "ask" ? [opinion.sentence] : [];
}
