import type { TimedAttempt } from "../../domain/queue/times.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { keptApartFromDay } from "../../store/connection/stamp.ts";
import { changesOf } from "../../store/connection/until-write.ts";
import { undoneImports } from "../../store/steps/steps.ts";
import { type Athlete, allAthletes } from "../../store/tables/athletes.ts";
import { attemptTimes } from "../../store/tables/attempts.ts";
import { type Day, dayAtHand } from "../../store/tables/days.ts";
import { type Entrant, entrants, type LeftOut, leftOut } from "../../store/tables/entrants.ts";

/** What a plan of results was made from, to see later whether the same plan would be made again. */
export interface ResultsFacts {
  readonly changes: number;
  readonly day: Day;
  readonly people: readonly Athlete[];
  readonly here: readonly Entrant[];
  readonly leftOut: readonly LeftOut[];
  readonly undone: readonly number[];
  /** Another one whenever marks of other days have changed. */
  readonly otherDays: object;
  /** All attempts of the day, in the order of entry. */
  readonly times: readonly TimedAttempt[];
}

const stampOfOtherDays = keptApartFromDay(() => ({}));

export function factsOf(db: ReadableDb, day: Day): ResultsFacts {
  return {
    changes: changesOf(db),
    day,
    people: allAthletes(db),
    here: entrants(db, day.id),
    leftOut: leftOut(db, day.id),
    undone: undoneImports(db),
    otherDays: stampOfOtherDays(db, day.id),
    times: attemptTimes(db, day.id),
  };
}

/**
 * Whether a plan that was made from these facts would be made again: nothing has changed, or only attempts of athletes who
 * are not in the sheet. The day's rules are frozen, and of attempts nothing else changes than whether they stand; of
 * everything else each value is looked at.
 */
export function areFactsNow(db: ReadableDb, facts: ResultsFacts, inSheet: ReadonlySet<number>): boolean {
  if (changesOf(db) === facts.changes) return true;
  const day = dayAtHand(db);
  if (day === undefined || day.id !== facts.day.id || day.state !== "open") return false;
  const now = factsOf(db, day);
  const attemptsOf = ({ times }: ResultsFacts) =>
    times.filter(({ athleteId }) => inSheet.has(athleteId)).map(({ id, stands }) => [id, stands]);
  const parts: readonly ((facts: ResultsFacts) => unknown)[] = [
    (each) => [each.day, each.undone, each.leftOut],
    ({ here }) => here,
    ({ people }) => people,
    attemptsOf,
  ];
  if (now.otherDays !== facts.otherDays) return false;
  return parts.every((part) => JSON.stringify(part(now)) === JSON.stringify(part(facts)));
}
