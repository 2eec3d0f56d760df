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

/** Returns a sheet to fill in: every readable column, and two invented rows to overwrite. */
export function templateOf(kind: SheetKindName): { name: string; text: string } {
  const fields = columnsOf[kind];
  const rows = examples[kind].map((example) => fields.map((field) => example[field] ?? null));
  return { name: `${kind}-template.csv`, text: writeSheet(fields, rows, { forSpreadsheets: true }) };
}
