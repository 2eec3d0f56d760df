import { z } from "zod";
import { nextTest } from "../../domain/queue/order.ts";
import { isDone } from "../../domain/queue/queue.ts";
import type { LengthUnit } from "../../domain/tests/protocol.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import type { Athlete } from "../../store/tables/athletes.ts";
import { attemptsOfAthlete } from "../../store/tables/attempts.ts";
import type { Day } from "../../store/tables/days.ts";
import { entrantOf } from "../../store/tables/entrants.ts";
import { attemptSchema, testSchema, toldSchema } from "../door/shapes.ts";
import { attemptView, toldOf } from "../marks/attempts.ts";
import { tellMarks } from "../marks/marks.ts";
import { personOf, personSchema } from "./person.ts";
import { seriesOf } from "./series.ts";
import { apartSchema, seriesSchema } from "./series-schemas.ts";

/** All data about one athlete, for their page. */
export const athletePage = personSchema.extend({
  /** When today's state was reached; null for an athlete not on the list. */
  since: z.string().nullable(),
  /** The next test; null when none is left or the athlete does not test. */
  next: testSchema.nullable(),
  marks: z.array(toldSchema.extend({ test: testSchema })),
  /** Every attempt of today in the order of entry, void ones included. */
  attempts: z.array(attemptSchema),
  /** Marks that compare with each other, by test and variant, in the order of the tests. */
  series: z.array(seriesSchema),
  /** Every other complete mark, newest first. */
  apart: z.array(apartSchema),
});

type AthletePage = z.infer<typeof athletePage>;

/** @param today ISO 8601, for use without a current day. */
export function buildAthletePage(
  db: ReadableDb,
  day: Day | null,
  athlete: Athlete,
  today: string,
  lengths: LengthUnit,
): AthletePage {
  const person = personOf(db, day, athlete, today);
  const { athleteId, bib, name, number, league } = person;
  const marks = day === null ? [] : tellMarks(db, day, athleteId);
  const done = new Set(marks.filter(({ mark }) => isDone(mark)).map(({ test }) => test));
  const attempts = day === null ? [] : attemptsOfAthlete(db, day.id, athleteId);
  return {
    ...person,
    since: day === null ? null : (entrantOf(db, day.id, athleteId)?.since ?? null),
    next: person.state === "testing" ? nextTest(done, new Set(person.leftOut)) : null,
    marks: marks.map((mark) => ({ ...toldOf(mark, lengths), test: mark.test })),
    attempts: attempts.map((attempt) => attemptView(attempt, { athleteId, bib, name, number, league })),
    ...seriesOf(db, day, athleteId, marks, lengths),
  };
}
