import { fingerprint } from "../../domain/tests/fingerprint.ts";
import { ofEachTest, type TestCode } from "../../domain/tests/registry.ts";
import type { Slot } from "../../domain/tests/slots.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { earlierMarks } from "../../store/reads/earlier-marks.ts";
import { undoneAttempts } from "../../store/steps/steps.ts";
import { type Athlete, allAthletes } from "../../store/tables/athletes.ts";
import { attemptsOfDay } from "../../store/tables/attempts.ts";
import type { Day } from "../../store/tables/days.ts";
import { type Entrant, entrants, leftOut } from "../../store/tables/entrants.ts";
import { parametersOf } from "../../store/tables/marks.ts";
import { type TypicalErrors, typicalErrorsOf } from "../noise/errors.ts";
import { createRegister, type Register } from "./register.ts";

/** The standing attempts of one mark, from the store and from the sheet. */
export interface CountedAttempts {
  readonly seen: unknown[];
  readonly slots: Map<string, Slot>;
}

/** All facts that decide on a row of results, read once per sheet. */
export interface Hall {
  readonly day: Day;
  readonly register: Register<Athlete>;
  readonly athletes: ReadonlyMap<number, Athlete>;
  readonly entrants: ReadonlyMap<number, Entrant>;
  readonly bibs: ReadonlyMap<number, number>;
  /** Keys `athlete test`. */
  readonly leftOut: ReadonlySet<string>;
  readonly parameters: Readonly<Record<TestCode, unknown>>;
  /** Ids of all attempts of the day, void ones included. */
  readonly ids: ReadonlySet<string>;
  /** Ids of attempts whose import was undone. */
  readonly undone: ReadonlySet<string>;
  standing(athleteId: number, test: TestCode, variant: string): CountedAttempts;
  /** The typical error of each test from the days before. */
  readonly errors: TypicalErrors;
  /** Returns the athlete's own last comparable mark; undefined when there is none. */
  last(athleteId: number, test: TestCode, variant: string): number | undefined;
}

export function readHall(db: ReadableDb, day: Day): Hall {
  const people = allAthletes(db);
  const here = entrants(db, day.id);
  const attempts = attemptsOfDay(db, day.id);
  const parameters = ofEachTest((test) => parametersOf(db, day.id, test));
  const standing = createStanding();
  for (const attempt of attempts) {
    if (attempt.void !== null) continue;
    const { athleteId, test, variant, slot, seen, enteredBy } = attempt;
    addTo(standing(athleteId, test, variant), slot, seen, enteredBy);
  }
  const lasts = new Map(
    earlierMarks(db, day).map((mark) => [`${mark.athleteId} ${mark.fingerprint}`, mark.value]),
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
    undone: undoneAttempts(db),
    standing,
    errors: typicalErrorsOf(db, day.id),
    last: (athleteId, test, variant) =>
      lasts.get(`${athleteId} ${fingerprint(test, variant, parameters[test])}`),
  };
}

function createStanding(): Hall["standing"] {
  const all = new Map<string, CountedAttempts>();
  return (athleteId, test, variant) => {
    const key = `${athleteId} ${test} ${variant}`;
    const found = all.get(key) ?? { seen: [], slots: new Map() };
    all.set(key, found);
    return found;
  };
}

/** Adds an attempt to those that stand in its slot. */
export function addTo({ seen: all, slots }: CountedAttempts, slot: string, seen: unknown, by: string): void {
  const there = slots.get(slot) ?? { count: 0, by };
  slots.set(slot, { ...there, count: there.count + 1 });
  all.push(seen);
}
