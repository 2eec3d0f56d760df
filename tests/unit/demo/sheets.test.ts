import { readFileSync } from "node:fs";
import Papa from "papaparse";
import { expect, test } from "vitest";
import { formatTime, parseTime } from "../../../electron/domain/units.ts";
import { makeSheets } from "../../../resources/demo/sheets.ts";

const folder = new URL("../../../resources/demo/", import.meta.url).pathname;
const sheets = makeSheets();

function rows(text: string): Record<string, string>[] {
  return Papa.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true }).data;
}

test.each(["roster", "results", "past"] as const)(
  "the seed gives the %s that lies in the project",
  (kind) => {
    expect(sheets[kind]).toBe(readFileSync(`${folder}${kind}.csv`, "utf8"));
    expect(makeSheets()[kind]).toBe(sheets[kind]);
  },
);

test("the roster has what leagues' lists have", () => {
  const roster = rows(sheets.roster);
  expect(roster).toHaveLength(60);
  expect(new Set(roster.map(({ league }) => league)).size).toBe(3);
  const numbers = roster.map(({ number = "" }) => number).filter((number) => number !== "");
  expect(numbers.length).toBeLessThan(60);
  expect(new Set(numbers).size).toBeLessThan(numbers.length);
  expect(new Set(roster.map(({ league, number, name }) => `${league} ${number || name}`)).size).toBe(60);
  const minors = roster.filter(({ birth_year }) => Number(birth_year) >= 2008);
  expect(new Set(minors.map((row) => row.guardian_consent))).toEqual(new Set(["yes", "no", ""]));
  expect(roster.some(({ name }) => name?.includes(","))).toBe(true);
  expect(new Set(roster.map(({ screen }) => screen))).toEqual(new Set(["name", "bib", "hidden"]));
  const years = roster.map(({ birth_year }) => Number(birth_year));
  expect([Math.min(...years), Math.max(...years)]).toEqual([1979, 2009]);
});

test("the marks lie where marks of people who train lie", () => {
  const results = rows(sheets.results);
  const of = (test: string) => results.filter((row) => row.test === test);
  expect(new Set(results.map(({ league, name }) => `${league} ${name}`)).size).toBeGreaterThan(45);
  within(
    of("push-up").map((row) => Number(row.reps) - Number(row.missed_at_end)),
    [3, 42],
  );
  within(
    of("agility").map(
      (row) => 4 * Number(row.laps) + Number(row.extra_quadrants) - 0.5 * Number(row.line_touches),
    ),
    [15, 40],
  );
  within(
    of("vertical").map(
      (row) => (Number(row.touch_reach) - Number(row.standing_reach)) * (row.unit === "in" ? 2.54 : 1),
    ),
    [20, 55],
  );
  within(of("core").map(secondsOf), [40, 360]);
  const finished = of("endurance").filter((row) => row.finished === "yes");
  within(finished.map(secondsOf), [170, 450]);
  expect(of("endurance")).toHaveLength(finished.length + 1);
});

/** Held apart from the program's own reading by writing the time back. */
function secondsOf({ time = "" }: Record<string, string>): number {
  const read = parseTime(time);
  if (!("ms" in read)) throw new Error(`No time: ${time}`);
  expect(time.startsWith(formatTime(read.ms, false))).toBe(true);
  return read.ms / 1000;
}

function within(values: readonly number[], [least, most]: readonly [number, number]): void {
  expect(values.length).toBeGreaterThan(20);
  expect(Math.min(...values)).toBeGreaterThanOrEqual(least);
  expect(Math.max(...values)).toBeLessThanOrEqual(most);
}
