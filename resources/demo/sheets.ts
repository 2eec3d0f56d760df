import { seededChance } from "../../electron/domain/chance.ts";
import { columnsOf, type SheetKindName } from "../../electron/sheets/headers.ts";
import { writeSheet } from "../../electron/sheets/write.ts";
import { type Ability, later, makeAbility, onTheDay } from "./marks.ts";
import { makePeople, type Person } from "./people.ts";
import { type Course, type ResultCells, writePast, writeResults } from "./results.ts";
import { doneTests } from "./tests.ts";

/** The two days before the demonstration's own (19 September 2026), newest last. */
const earlierDates = ["2026-01-17", "2026-05-16"] as const;

interface Athlete extends Person {
  /** What they showed on each of the two earlier days and on the day itself. */
  readonly shown: readonly [Ability, Ability, Ability];
}

/**
 * The three sheets of the demonstration as text. Everything follows from one fixed seed: the same program always writes
 * the same bytes.
 */
export function makeSheets(): Readonly<Record<SheetKindName, string>> {
  const random = seededChance([2026, 9, 19, 60]);
  const athletes = makePeople(random).map((person) => train(random, person));
  const tested = athletes.filter(({ tests }) => tests);
  const results = tested.flatMap((athlete, index) =>
    writeResults(random, athlete, athlete.shown[2], courseOf(index)),
  );
  return {
    roster: sheet("roster", athletes.map(rosterCells)),
    past: sheet("past", athletes.flatMap(pastCells)),
    // As the papers of the stations come in: one test after the other.
    results: sheet(
      "results",
      doneTests.flatMap((test) => results.filter((row) => row.test === test)),
    ),
  };
}

function train(random: () => number, person: Person): Athlete {
  const first = makeAbility(random, person);
  const second = later(random, first);
  const third = later(random, second);
  return {
    ...person,
    shown: [onTheDay(random, first), onTheDay(random, second), onTheDay(random, third)],
  };
}

/** Most do all five; a few leave early, one with half a quadrant jump and one in the middle of the circuit. */
function courseOf(index: number): Course {
  switch (index) {
    case 11:
      return { last: "agility", ends: "one direction" };
    case 19:
      return { last: "vertical", ends: "well" };
    case 23:
      return { last: "endurance", ends: "stopped" };
    case 34:
      return { last: "core", ends: "well" };
    case 43:
      return { last: "agility", ends: "one direction" };
    default:
      return { last: "endurance", ends: "well" };
  }
}

function rosterCells(person: Person): ResultCells {
  const { league, name, number, birthYear, category, guardianConsent, board, share } = person;
  return {
    league,
    name,
    number,
    birth_year: birthYear,
    category,
    guardian_consent: guardianConsent,
    screen: board,
    share,
  };
}

function pastCells(athlete: Athlete): ResultCells[] {
  const { league, number, name, earlierDays } = athlete;
  const days = earlierDates.map((date, index) => ({ date, shown: athlete.shown[index] }));
  return days.slice(days.length - earlierDays).flatMap(({ date, shown }) =>
    doneTests.flatMap((test) => {
      const mark = shown?.[test];
      return mark === undefined
        ? []
        : { league, number, name, date, test, ...writePast(athlete, test, mark) };
    }),
  );
}

/** Only the columns that say something. */
function sheet(kind: SheetKindName, rows: readonly ResultCells[]): string {
  const columns = columnsOf[kind].filter((field) => rows.some((row) => row[field] !== undefined));
  return writeSheet(
    columns,
    rows.map((row) => columns.map((column) => row[column] ?? null)),
  );
}
