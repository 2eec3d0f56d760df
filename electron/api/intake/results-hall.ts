import { fingerprint } from "../../domain/tests/fingerprint.ts";
import { protocolOf, type TestCode, testCodes } from "../../domain/tests/registry.ts";
import type { Athlete } from "../../store/athletes.ts";
import { allAthletes } from "../../store/athletes.ts";
import { attemptsOfDay } from "../../store/attempts.ts";
import type { ReadableDb } from "../../store/database.ts";
import type { Day } from "../../store/days.ts";
import { type Entrant, entrants, leftOut } from "../../store/entrants.ts";
import { earlierMarks, parametersOf } from "../../store/marks.ts";
import { type TypicalErrors, typicalErrorsOf } from "../noise/errors.ts";
import { createRegister, type Register } from "./register.ts";

/** The attempts that stand for one mark, those of the store and those the sheet adds. */
export interface Standing {
  readonly seen: unknown[];
  /** How many a slot holds, and who keyed the first. */
  readonly slots: Map<string, { count: number; readonly by: string }>;
}

/** All that decides what a row of results comes to, read once for a whole sheet. */
export interface Hall {
  readonly day: Day;
  readonly register: Register<Athlete>;
  readonly athletes: ReadonlyMap<number, Athlete>;
  readonly entrants: ReadonlyMap<number, Entrant>;
  readonly bibs: ReadonlyMap<number, number>;
  /** Keys `athlete test`. */
  readonly leftOut: ReadonlySet<string>;
  readonly parameters: Readonly<Record<TestCode, unknown>>;
  /** Ids of all attempts of the day, those that no longer stand among them. */
  readonly ids: ReadonlySet<string>;
  standing(athleteId: number, test: TestCode, variant: string): Standing;
  /** The noise of each test as the days before show it. */
  readonly errors: TypicalErrors;
  /** The athlete's own last mark that compares; undefined when there is none. */
  last(athleteId: number, test: TestCode, variant: string): number | undefined;
}

export function readHall(db: ReadableDb, day: Day): Hall {
  const people = allAthletes(db);
  const here = entrants(db, day.id);
  const attempts = attemptsOfDay(db, day.id);
  const byTest = testCodes.map((test) => [test, parametersOf(db, day.id, test)] as const);
  const parameters = Object.fromEntries(byTest) as Record<TestCode, unknown>;
  const standing = createStanding();
  for (const attempt of attempts) {
    if (attempt.void !== null) continue;
    const { athleteId, test, variant, slot, seen, enteredBy } = attempt;
    stand(standing(athleteId, test, variant), slot, seen, enteredBy);
  }
  const lasts = new Map(
    earlierMarks(db, day, null).map((mark) => [`${mark.athleteId} ${mark.fingerprint}`, mark.value]),
  );
  return {
    day,
    register: createRegister(people),
    athletes: new Map(people.map((athlete) => [athlete.id, athlete])),
    entrants: new Map(here.map((entrant) => [entrant.athleteId, entrant])),
    bibs: new Map(here.flatMap(({ bib, athleteId }) => (bib === null ? [] : [[bib, athleteId]]))),
    leftOut: new Set(leftOut(db, day.id).map(({ athleteId, test }) => `${athleteId} ${test}`)),
    parameters,
    ids: new Set(attempts.map(({ id }) => id)),
    standing,
    errors: typicalErrorsOf(db, day.id),
    last: (athleteId, test, variant) =>
      lasts.get(`${athleteId} ${fingerprint(test, variant, parameters[test])}`),
  };
}

function createStanding(): Hall["standing"] {
  const all = new Map<string, Standing>();
  return (athleteId, test, variant) => {
    const key = `${athleteId} ${test} ${variant}`;
    const found = all.get(key) ?? { seen: [], slots: new Map() };
    all.set(key, found);
    return found;
  };
}

/** Lets one more attempt stand. */
export function stand({ seen: all, slots }: Standing, slot: string, seen: unknown, by: string): void {
  const there = slots.get(slot);
  if (there === undefined) slots.set(slot, { count: 1, by });
  else there.count += 1;
  all.push(seen);
}

/** Who keyed the first attempt of a slot that has no room left; undefined while there is room. */
export function takenBy(hall: Hall, { slots }: Standing, test: TestCode, slot: string): string | undefined {
  const there = slots.get(slot);
  const size = protocolOf(test).slotSize(hall.parameters[test]);
  return there !== undefined && there.count >= size ? there.by : undefined;
}
