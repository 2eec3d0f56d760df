import { columnsOf, type SheetKindName } from "../../sheets/headers.ts";
import { type SheetCell, writeSheet } from "../../sheets/write.ts";

/** Two invented rows of each sheet, by field; two show the form, so not every test is included. */
const examples: Readonly<Record<SheetKindName, readonly Readonly<Record<string, SheetCell>>[]>> = {
  roster: [
    {
      league: "Lantern Bay",
      name: "Vera Ropewalk",
      number: "07",
      birth_year: 1996,
      category: "women",
      screen: "name",
      share: "yes",
    },
    {
      league: "Lantern Bay",
      name: "Moss Parcel",
      number: "212",
      birth_year: 2010,
      category: "open",
      guardian_consent: "yes",
      screen: "bib",
      share: "no",
    },
  ],
  results: [
    {
      league: "Lantern Bay",
      number: "07",
      test: "push-up",
      variant: "full",
      reps: 23,
      missed_at_end: 3,
      entered_by: "KL",
    },
    {
      league: "Lantern Bay",
      number: "212",
      test: "vertical",
      standing_reach: 219.5,
      touch_reach: 262,
      unit: "cm",
      entered_by: "KL",
    },
  ],
  past: [
    {
      league: "Lantern Bay",
      number: "07",
      date: "2026-03-14",
      test: "agility",
      mark: 29.5,
      unit: "landings",
    },
    {
      league: "Lantern Bay",
      name: "Moss Parcel",
      date: "2026-03-14",
      test: "core",
      mark: "2:31",
      unit: "m:ss",
    },
  ],
};

/** A league's own list as it is often sent: a title, headers in the league's words, and no column with the league. */
const titled: readonly SheetCell[][] = [
  ["Lantern Bay, our skaters this spring"],
  [],
  ["#", "Derby name", "Born", "Gender"],
  ["07", "Vera Ropewalk", 1996, "F"],
  ["212", "Moss Parcel", 2010, "NB"],
  ["34", "Tilly Windlass", 1989, "F"],
];

/** Past results as they stand in a league's own file: a row per athlete, a column per test and date. */
const wide: readonly SheetCell[][] = [
  [
    "League",
    "No.",
    "Name",
    "Push-ups (full) 2025-11-08",
    "Plank 2025-11-08",
    "Push-ups (full) 2026-03-14",
    "Plank 2026-03-14",
  ],
  ["Lantern Bay", "07", "Vera Ropewalk", 19, "2:05", 23, "2:31"],
  ["Lantern Bay", "212", "Moss Parcel", 14, "1:20", "", "1:48"],
];

/** The sheets that leagues send every day, by name; each goes in as it is, but for what it is there to show. */
export const exampleNames = ["roster", "roster-titled", "results", "past", "past-wide"] as const;
export type ExampleName = (typeof exampleNames)[number];

/** Returns an example to look at or to fill in; the three of a row a person or a result have every readable column. */
export function exampleOf(name: ExampleName): { name: string; text: string } {
  return { name: `${name}-example.csv`, text: textOf(name) };
}

function textOf(name: ExampleName): string {
  if (name === "roster-titled") return rowsText(titled);
  return name === "past-wide" ? rowsText(wide) : plainOf(name);
}

function rowsText([first = [], ...rows]: readonly SheetCell[][]): string {
  return writeSheet(first.map(String), rows, { forSpreadsheets: true });
}

function plainOf(kind: SheetKindName): string {
  const fields = columnsOf[kind];
  const rows = examples[kind].map((example) => fields.map((field) => example[field] ?? null));
  return writeSheet(fields, rows, { forSpreadsheets: true });
}
