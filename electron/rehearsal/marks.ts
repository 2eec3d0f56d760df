import { type MarkWithNews, tellMarks } from "../api/marks/marks.ts";
import { fold } from "../domain/people/fold.ts";
import { protocolOf, testCodes } from "../domain/tests/registry.ts";
import { inUnit } from "../domain/units.ts";
import { type SheetCell, writeSheet } from "../sheets/write.ts";
import type { ReadableDb } from "../store/connection/database.ts";
import { everybody, type Present } from "../store/reads/present.ts";
import type { Day } from "../store/tables/days.ts";

/** A mark of the day and its athlete. */
export interface OwnedMark {
  readonly who: Present;
  readonly told: MarkWithNews;
}

/** Returns all marks of a day by league, name and test. */
export function ownedMarks(db: ReadableDb, day: Day): OwnedMark[] {
  const people = new Map(everybody(db, day.id).map((who) => [who.athleteId, who]));
  return tellMarks(db, day)
    .flatMap((told) => {
      const who = people.get(told.athleteId);
      return who === undefined ? [] : { who, told };
    })
    .map((mark) => ({ mark, key: orderOf(mark) }))
    .sort((a, b) => compare(a.key, b.key))
    .map(({ mark }) => mark);
}

/** Counts the marks by standing; `open`: tests begun without a mark. */
export function countMarks(marks: readonly OwnedMark[]) {
  const count = (standing: string | undefined) =>
    marks.filter(({ told: { news } }) => news?.standing === standing).length;
  return {
    open: count(undefined),
    first: count("first"),
    best: count("best"),
    equal: count("equal"),
    below: count("below"),
  };
}

/** Returns a mark's sort key; texts are folded, so that case and accents don't matter. */
function orderOf({ who, told }: OwnedMark): (string | number)[] {
  const variant = protocolOf(told.test).variants.indexOf(told.variant);
  return [fold(who.league), fold(who.name), who.number, testCodes.indexOf(told.test), variant];
}

function compare(a: readonly (string | number)[], b: readonly (string | number)[]): number {
  const at = a.findIndex((part, index) => part !== b[index]);
  const [one = "", other = ""] = [a[at], b[at]];
  return at < 0 ? 0 : one < other ? -1 : 1;
}

const columns = [
  "league",
  "number",
  "name",
  "bib",
  "test",
  "variant",
  "mark",
  "unit",
  "best",
  "previous",
  "change",
  "verdict",
];

/** Makes `marks.csv`: one row per mark, in its unit; an incomplete one has neither mark nor best. */
export function marksSheet(marks: readonly OwnedMark[]): string {
  return writeSheet(columns, marks.map(rowOf));
}

/** Makes a row. `change` is mark less previous: for a circuit, where shorter is better, a gain is below zero. */
function rowOf({ who, told: { test, variant, mark, news } }: OwnedMark): SheetCell[] {
  const { grain } = protocolOf(test);
  const written = (grains: number | null) => (grains === null ? null : inUnit(grain, grains));
  const value = mark.state === "complete" ? mark.value : null;
  const previous = news?.previous ?? null;
  const change = value === null || previous === null ? null : value - previous;
  return [
    ...[who.league, who.number, who.name, who.bib, test, variant],
    ...[written(value), grain.unit, news?.standing ?? null],
    ...[written(previous), written(change), news?.verdict ?? null],
  ];
}
