import { nextTest } from "../../domain/queue/order.ts";
import { isDone } from "../../domain/queue/queue.ts";
import type { LengthUnit } from "../../domain/tests/protocol.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import type { Athlete } from "../../store/tables/athletes.ts";
import { attemptsOfAthlete } from "../../store/tables/attempts.ts";
import type { Day } from "../../store/tables/days.ts";
import { entrantOf } from "../../store/tables/entrants.ts";
import { attemptView, toldOf } from "../marks/attempts.ts";
import { tellMarks } from "../marks/marks.ts";
import { personOf } from "./person.ts";
import { seriesOf } from "./series.ts";

/** Returns all data about one athlete, for their page. @param today ISO 8601, for use without a current day. */
export function buildAthletePage(
  db: ReadableDb,
  day: Day | null,
  athlete: Athlete,
  today: string,
  lengths: LengthUnit,
) {
  const person = personOf(db, day, athlete, today);
  const { athleteId, bib, name, number, league } = person;
  const marks = day === null ? [] : tellMarks(db, day, athleteId);
  const done = new Set(marks.filter(({ mark }) => isDone(mark)).map(({ test }) => test));
  const attempts = day === null ? [] : attemptsOfAthlete(db, day.id, athleteId);
  return {
    ...person,
    /** When today's state was reached; null for an athlete not on the list. */
    since: day === null ? null : (entrantOf(db, day.id, athleteId)?.since ?? null),
    /** The next test; null when none is left or the athlete does not test. */
    next: person.state === "testing" ? nextTest(done, new Set(person.leftOut)) : null,
    marks: marks.map((mark) => ({ ...toldOf(mark, lengths), test: mark.test })),
    /** Every attempt of today in the order of entry, void ones included. */
    attempts: attempts.map((attempt) => attemptView(attempt, { athleteId, bib, name, number, league })),
    ...seriesOf(db, day, athleteId, marks, lengths),
  };
}
