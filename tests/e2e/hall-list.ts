import { readFileSync } from "node:fs";
import Papa from "papaparse";
import { type TestCode, testCodes } from "../../electron/domain/tests/registry.ts";

/** The demo day's own lists, as they are written on the clipboards of its stations. */

type Row = Readonly<Record<string, string>>;

/** What is typed into one field: the beginning of its label, and the text. */
type Typed = readonly [label: string, text: string];

/** One attempt as it is typed: its fields from top to bottom. */
export type Attempt = readonly Typed[];

export interface ListedAthlete {
  readonly name: string;
  readonly bib: number;
  /** The attempts of each test, in the order in which they are typed. */
  readonly attempts: Readonly<Record<string, readonly Attempt[]>>;
}

const sheet = (name: string) =>
  readFileSync(new URL(`../../resources/demo/${name}.csv`, import.meta.url), "utf8");

/** The demo's roster and the results of days before, to be taken in. */
export const roster = sheet("roster");
export const past = sheet("past");

const rowsOf = (text: string) => Papa.parse<Row>(text, { header: true, skipEmptyLines: true }).data;

/** Whoever was born later may need a guardian on the day, who is asked about in check-in.spec.ts. */
const LAST_BIRTH_YEAR = 2005;

/**
 * The first `count` athletes of the demo's roster who are adults and did all five tests in full and in centimetres. Bibs are
 * those that check-in offers: 1, 2, 3 in the order in which they come.
 */
export function listedAthletes(count: number): ListedAthlete[] {
  const results = rowsOf(sheet("results"));
  return rowsOf(roster)
    .filter(({ birth_year }) => Number(birth_year) > 0 && Number(birth_year) <= LAST_BIRTH_YEAR)
    .map((person) => ({
      name: person.name ?? "",
      rows: results.filter(
        ({ league, name, number }) =>
          league === person.league && name === person.name && number === person.number,
      ),
    }))
    .filter(({ rows }) => isWhole(rows))
    .slice(0, count)
    .map(({ name, rows }, index) => ({ name, bib: index + 1, attempts: attemptsOf(rows) }));
}

function isWhole(rows: readonly Row[]): boolean {
  const of = (test: TestCode) => rows.filter((row) => row.test === test);
  const [leaps, turns] = [of("vertical"), of("agility")];
  return (
    of("push-up").filter(({ variant }) => variant === "full").length === 1 &&
    turns.map(({ direction }) => direction).join() === "cw,ccw" &&
    leaps.length === 3 &&
    leaps.every(({ unit }) => unit === "cm") &&
    of("core").length === 1 &&
    of("endurance").filter(({ finished }) => finished === "yes").length === 1
  );
}

function attemptsOf(rows: readonly Row[]): Record<string, Attempt[]> {
  return Object.fromEntries(
    testCodes.map((test) => [
      test,
      typedAt(
        test,
        rows.filter((row) => row.test === test),
      ),
    ]),
  );
}

function typedAt(test: TestCode, rows: readonly Row[]): Attempt[] {
  const cell = (row: Row | undefined, name: string) => row?.[name] ?? "";
  switch (test) {
    case "push-up":
      return rows.map((row) => [
        ["Top beats", cell(row, "reps")],
        ["Missed reps", cell(row, "missed_at_end")],
      ]);
    case "agility":
      return rows.map((row) => [
        ["Full laps", cell(row, "laps")],
        ["Extra", cell(row, "extra_quadrants")],
        ["Line touches", cell(row, "line_touches")],
      ]);
    case "vertical":
      return [
        [
          ["Standing", cell(rows[0], "standing_reach")],
          ...rows.map((row, index): Typed => [`Touch ${index + 1}`, cell(row, "touch_reach")]),
        ],
      ];
    default:
      return rows.map((row) => [["Time", cell(row, "time")]]);
  }
}
