import { z } from "zod";
import { Refusal } from "../../domain/refusal.ts";
import { judge } from "../../domain/tests/judge.ts";
import { parseAttempt, protocolOf, refusalOf, type TestCode } from "../../domain/tests/registry.ts";
import { type Sentence, sentence } from "../../domain/words.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { calls } from "../../store/tables/calls.ts";
import { type Day, dayAtHand } from "../../store/tables/days.ts";
import { parametersOf } from "../../store/tables/marks.ts";
import type { Study } from "../../store/tables/studies.ts";
import { addReading, standingReadings } from "../../store/tables/study-readings.ts";
import { requireOpenDay } from "../door/at-hand.ts";
import { initialsSchema } from "../door/said.ts";
import { lengthsSchema, sentenceSchema, stationPersonSchema } from "../door/shapes.ts";
import { allow, type Context } from "../door/trpc.ts";
import { heldLanes } from "../lanes/held.ts";
import { stationPersonOf } from "../marks/attempts.ts";
import { requireBib, requirePresent, requireTesting } from "../station/who.ts";
import { isKnown, refuseSecond } from "./readings.ts";
import { requireSeries } from "./require.ts";
import { studyToRead } from "./to-read.ts";

/** Whoever judges the attempts of one station a second time, at a device of their own. */
const secondJudge = allow("second-judge");

const toReadSchema = z.object({
  study: z
    .object({
      studyId: z.string(),
      variant: z.string(),
      /** Judges whose readings are brought, and how many athletes each has read. */
      series: z.array(z.object({ position: z.int(), judge: z.string(), read: z.int() })),
    })
    .nullable(),
  /** The day's frozen parameters; parse with the test's own schema. */
  parameters: z.unknown(),
  /** Who is at the station now, in a lane or called, with the series in which they have been read. */
  people: z.array(z.object({ who: stationPersonSchema, read: z.array(z.int()) })),
});

const readSchema = z.discriminatedUnion("outcome", [
  /** Nothing was written yet. */
  z.object({ outcome: z.literal("ask"), questions: z.array(sentenceSchema).min(1) }),
  z.object({ outcome: z.literal("saved"), told: z.null() }),
]);

/** Returns the study of a second judge's test and who is at its station; never what the station entered. */
export const toRead = secondJudge
  .output(toReadSchema)
  .query(({ ctx: { desk, ...ctx } }) => viewToRead(desk.store.db, ownTest(ctx)));

/** Finds an athlete by a typed bib. @throws Refusal when nobody wears it, or its athlete takes no part in this test */
export const find = secondJudge
  .input(z.object({ bib: z.string().max(40) }))
  .output(stationPersonSchema)
  .query(({ ctx: { desk, ...ctx }, input }) => {
    const { db } = desk.store;
    const day = requireOpenDay(db);
    const who = requireBib(db, day, input.bib);
    requireTesting(db, day, who, ownTest(ctx));
    return stationPersonOf(who);
  });

/**
 * Enters a second judge's reading, of all attempts that make the result. The same id again changes nothing. It is not held
 * against the first judge's result, which may come later, and which must not be told here.
 */
export const read = secondJudge
  .input(
    z.object({
      /** Made by the device, so that a retry is known. */
      id: z.uuid(),
      studyId: z.uuid(),
      position: z.int().positive().max(4),
      athleteId: z.int(),
      seen: z.array(z.unknown()).min(1).max(10),
      by: initialsSchema,
      lengths: lengthsSchema,
      /** Whether somebody has answered that an unusual reading is right. */
      sure: z.boolean().default(false),
    }),
  )
  .output(readSchema)
  .mutation(({ ctx: { desk, ...ctx }, input: { seen, sure, lengths, ...rest } }) => {
    const at = desk.now().toISOString();
    return desk.store.write(["studies"], (db): z.infer<typeof readSchema> => {
      const day = requireOpenDay(db);
      const study = requireOwn(db, day, ownTest(ctx), rest);
      const { value, questions } = scored(db, day, study, seen);
      const reading = { ...rest, value, reason: "", at };
      if (isKnown(db, reading)) return { outcome: "saved", told: null };
      const who = requirePresent(db, day, rest.athleteId);
      requireTesting(db, day, who, study.test);
      refuseSecond(db, study, reading, who.name, lengths);
      if (questions.length > 0 && !sure) return { outcome: "ask", questions: [...questions] };
      addReading(db, { ...reading, source: "keyed" });
      return { outcome: "saved", told: null };
    });
  });

/** @throws Refusal `unavailable` for a caller that is at no station */
function ownTest({ station }: { readonly station?: Context["station"] | undefined }): TestCode {
  if (station == null) throw new Refusal("unavailable", sentence("study.noStation"));
  return station;
}

/** @throws Refusal `forbidden` for another test's study, `conflict` for one of another day */
function requireOwn(
  db: ReadableDb,
  day: Day,
  test: TestCode,
  which: { readonly studyId: string; readonly position: number },
): Study {
  const { study } = requireSeries(db, which);
  if (study.test !== test) throw new Refusal("forbidden", sentence("door.otherStation"));
  if (study.dayId !== day.id || study.kind !== "judges")
    throw new Refusal("conflict", sentence("study.otherDay"));
  return study;
}

function viewToRead(db: ReadableDb, test: TestCode): z.infer<typeof toReadSchema> {
  const day = dayAtHand(db);
  if (day === undefined || day.state !== "open") return { study: null, parameters: null, people: [] };
  const parameters = parametersOf(db, day.id, test);
  const found = studyToRead(db, day, test);
  if (found === null) return { study: null, parameters, people: [] };
  const { study, brought } = found;
  const readings = standingReadings(db, study.id);
  const series = brought.map(({ position, judge: initials }) => {
    const own = readings.filter((reading) => reading.position === position);
    return { position, judge: initials, read: own.length };
  });
  const people = atStation(db, day, test).map((athleteId) => ({
    who: stationPersonOf(requirePresent(db, day, athleteId)),
    read: readings.filter((each) => each.athleteId === athleteId).map(({ position }) => position),
  }));
  return { study: { studyId: study.id, variant: study.variant, series }, parameters, people };
}

/** Returns who is at a station: in its lanes first, then who was called to it. */
function atStation(db: ReadableDb, day: Day, test: TestCode): number[] {
  const inLanes = heldLanes(db, day.id).filter((lane) => lane.test === test);
  const called = calls(db, day.id).filter((call) => call.test === test);
  return [...new Set([...inLanes, ...called].map(({ athleteId }) => athleteId))];
}

interface Scored {
  readonly value: number;
  readonly questions: readonly Sentence[];
}

/** Scores the attempts of a reading by the day's rules. @throws Refusal `bad-input` for what makes no whole result */
function scored(db: ReadableDb, day: Day, { test }: Study, seen: readonly unknown[]): Scored {
  const parameters = parametersOf(db, day.id, test);
  const attempts = seen.map((each) => {
    const parsed = parseAttempt(test, each);
    if (!parsed.success) throw new Refusal("bad-input", refusalOf(parsed.error));
    return parsed.data;
  });
  const { refusal, questions } = judge(test, parameters, attempts);
  if (refusal !== null) throw new Refusal("bad-input", refusal);
  const mark = protocolOf(test).score(parameters, attempts);
  if (mark.state !== "complete" || mark.trials !== undefined)
    throw new Refusal("bad-input", sentence("study.notWhole"));
  return { value: mark.value, questions };
}
