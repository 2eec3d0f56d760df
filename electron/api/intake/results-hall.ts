import type { TimedAttempt } from "../../domain/queue/times.ts";
import { fingerprint } from "../../domain/tests/fingerprint.ts";
import { ofEachTest, protocolOf, type TestCode } from "../../domain/tests/registry.ts";
import type { Slot } from "../../domain/tests/slots.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { earlierMarks } from "../../store/reads/earlier-marks.ts";
import { undoneAttempts } from "../../store/steps/steps.ts";
import type { Athlete } from "../../store/tables/athletes.ts";
import { attemptsOfDay } from "../../store/tables/attempts.ts";
import type { Day } from "../../store/tables/days.ts";
import type { Entrant } from "../../store/tables/entrants.ts";
import { parametersOf } from "../../store/tables/marks.ts";
import { type TypicalErrors, typicalErrorsOf } from "../noise/errors.ts";
import { createRegister, type Register } from "./register.ts";
import { factsOf, type ResultsFacts } from "./results-facts.ts";

/** The standing attempts of one mark, from the store and from the sheet. */
export interface CountedAttempts {
  /** As they are kept; read by the test's own schema when they are scored. */
  readonly kept: unknown[];
  /** Those of the sheet, as they were read. */
  readonly seen: unknown[];
  readonly slots: Map<string, Slot>;
}

/** All facts that decide on a row of results, read once per sheet. */
export interface Hall {
  readonly day: Day;
  readonly facts: ResultsFacts;
  readonly register: Register<Athlete>;
  readonly athletes: ReadonlyMap<number, Athlete>;
  readonly entrants: ReadonlyMap<number, Entrant>;
  readonly bibs: ReadonlyMap<number, number>;
  /** Keys `athlete test`. */
  readonly leftOut: ReadonlySet<string>;
  readonly parameters: Readonly<Record<TestCode, unknown>>;
  /** All attempts of the day before the sheet, void ones included, by athlete. */
  readonly times: ReadonlyMap<number, readonly TimedAttempt[]>;
  /** Their ids. */
  readonly ids: ReadonlySet<string>;
  /** Ids of attempts whose import was undone. */
  readonly undone: ReadonlySet<string>;
  standing(athleteId: number, test: TestCode, variant: string): CountedAttempts;
  /** The typical error of each test from the days before. */
  readonly errors: TypicalErrors;
  /** Returns the athlete's own last comparable mark; undefined when there is none. */
  last(athleteId: number, fingerprint: string): number | undefined;
  /** The fingerprint of marks of that test today. */
  fingerprintOf(test: TestCode, variant: string): string;
}

export function readHall(db: ReadableDb, day: Day): Hall {
  const facts = factsOf(db, day);
  const { people, here, leftOut, times } = facts;
  const attempts = attemptsOfDay(db, day.id);
  const parameters = ofEachTest((test) => parametersOf(db, day.id, test));
  const standing = createStanding();
  for (const attempt of attempts) {
    if (attempt.void !== null) continue;
    const { athleteId, test, variant, slot, seen, enteredBy } = attempt;
    const counted = standing(athleteId, test, variant);
    counted.kept.push(seen);
    takeSlot(counted, slot, enteredBy);
  }
  const lasts = new Map(
    earlierMarks(db, day).map((mark) => [`${mark.athleteId} ${mark.fingerprint}`, mark.value]),
  );
  const names = new Map<string, string>();
  return {
    day,
    facts,
    register: createRegister(people),
    athletes: new Map(people.map((athlete) => [athlete.id, athlete])),
    entrants: new Map(here.map((entrant) => [entrant.athleteId, entrant])),
    bibs: new Map(here.flatMap(({ bib, athleteId }) => (bib === null ? [] : [[bib, athleteId]]))),
    leftOut: new Set(leftOut.map(({ athleteId, test }) => `${athleteId} ${test}`)),
    parameters,
    times: Map.groupBy(times, ({ athleteId }) => athleteId),
    ids: new Set(attempts.map(({ id }) => id)),
    undone: undoneAttempts(db),
    standing,
    errors: typicalErrorsOf(db, day.id),
    last: (athleteId, name) => lasts.get(`${athleteId} ${name}`),
    fingerprintOf(test, variant) {
      const key = `${test} ${variant}`;
      const name = names.get(key) ?? fingerprint(test, variant, parameters[test]);
      names.set(key, name);
      return name;
    },
  };
}

function createStanding(): Hall["standing"] {
  const all = new Map<string, CountedAttempts>();
  return (athleteId, test, variant) => {
    const key = `${athleteId} ${test} ${variant}`;
    const found = all.get(key) ?? { kept: [], seen: [], slots: new Map() };
    all.set(key, found);
    return found;
  };
}

/** Counts an attempt to those that stand in its slot. */
export function takeSlot({ slots }: CountedAttempts, slot: string, by: string): void {
  const there = slots.get(slot) ?? { count: 0, by };
  slots.set(slot, { ...there, count: there.count + 1 });
}

/** Everything that was seen of a mark, in the order of entry: the store's by the schema of now, as marks are derived. */
export function seenOf(test: TestCode, { kept, seen }: CountedAttempts): unknown[] {
  return [...kept.map((each) => protocolOf(test).attempt.parse(each)), ...seen];
}
