import type { TestCode } from "../domain/tests/registry.ts";
import { type WideHeader, wideHeader } from "./wide-header.ts";

/** The columns of a wide sheet that make one attempt, or one mark of an earlier day. */
export interface WidePart {
  readonly test: TestCode;
  readonly date: string;
  /** The column (from 0) of each field. */
  readonly columns: ReadonlyMap<string, number>;
  /** Those without which nothing was done: a way of doing it, or the reach standing, says nothing alone. */
  readonly own: readonly number[];
  readonly says: Readonly<Record<string, string>>;
}

interface WideColumn extends WideHeader {
  readonly column: number;
}

/** Of these tests one number is a whole attempt. */
const onlyField: Readonly<Partial<Record<TestCode, string>>> = {
  "push-up": "reps",
  core: "time",
  endurance: "time",
};

/** The field for a number of a test that is no attempt by itself: a leap needs its two reaches. */
export const bareField = "bare";

/** Returns the parts of a sheet with one column per test, in the order of its columns; empty for any other sheet. */
export function widePartsOf(kind: "roster" | "results" | "past", headers: readonly string[]): WidePart[] {
  if (kind === "roster") return [];
  const columns = wideColumns(kind, headers);
  const groups = [...Map.groupBy(columns, keyOf).values()];
  return groups.flatMap((group) => {
    const shared = group[0]?.trial === "" ? [] : columns.filter((column) => isSharedWith(column, group));
    return isOnlyShared(group, columns) ? [] : [partOf(kind, shared, group)];
  });
}

function wideColumns(kind: "results" | "past", headers: readonly string[]): WideColumn[] {
  return headers.flatMap((header, column) => {
    const wide = wideHeader(kind, header);
    return wide === null ? [] : [{ ...wide, column }];
  });
}

function keyOf({ test, date, says, trial }: WideColumn): string {
  return [test, date, says.variant, says.direction, trial].join("\n");
}

/** The reach standing is written down once, and every trial needs it. */
function isSharedWith(column: WideColumn, group: readonly WideColumn[]): boolean {
  const [first] = group;
  if (first === undefined || column.trial !== "" || column.field === null) return false;
  return column.test === first.test && column.date === first.date;
}

function isOnlyShared(group: readonly WideColumn[], all: readonly WideColumn[]): boolean {
  const [first] = group;
  if (first === undefined || first.trial !== "" || group.some(({ field }) => field === null)) return false;
  return all.some(({ test, date, trial }) => test === first.test && date === first.date && trial !== "");
}

function partOf(
  kind: "results" | "past",
  shared: readonly WideColumn[],
  group: readonly WideColumn[],
): WidePart {
  const [{ test, date }] = group as [WideColumn];
  const all = [...shared, ...group];
  const bare = kind === "past" ? "mark" : (onlyField[test] ?? bareField);
  const columns = new Map(all.map(({ field, column }) => [field ?? bare, column]));
  const own = group.filter(({ field }) => field !== "variant").map(({ column }) => column);
  return { test, date, columns, own, says: Object.assign({}, ...all.map(({ says }) => says)) };
}

/** Guesses the kind of a sheet with one column per test; null for any other sheet. */
export function guessWide(headers: readonly string[], hasBib: boolean): "results" | "past" | null {
  const past = wideColumns("past", headers);
  const results = wideColumns("results", headers);
  const dated = [...past, ...results].some(({ date }) => date !== "");
  const isSeen = results.some(({ field }) => field !== null && field !== "variant");
  if (!dated && !isSeen && new Set(results.map(({ test }) => test)).size < 2) return null;
  if (dated || headers.some((header) => /verdict|change|previous/i.test(header))) return "past";
  const isWhole = results.every(({ test, field }) => field !== null || onlyField[test] !== undefined);
  return isSeen || (hasBib && isWhole) ? "results" : "past";
}
