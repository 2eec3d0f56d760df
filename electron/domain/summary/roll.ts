import { fold } from "../people/fold.ts";
import { protocolOf, type TestCode, testCodes } from "../tests/registry.ts";
import type { SummaryDay, SummaryMark, SummaryPerson } from "./day.ts";
import { type Gap, gapOf } from "./gaps.ts";

/** An athlete's row: the five tests in order, each with its marks or the reason for none. */
export interface RollRow {
  readonly who: SummaryPerson;
  readonly tests: readonly RollCell[];
}

export interface RollCell {
  readonly test: TestCode;
  /** One per variant, the full one first. */
  readonly marks: readonly SummaryMark[];
  /** The reason for no complete mark; null when there is one. */
  readonly gap: Gap | null;
}

/** Returns everybody on the list with the five tests, by league and name. */
export function rollOf(day: SummaryDay): RollRow[] {
  const marks = Map.groupBy(day.marks, ({ athleteId }) => athleteId);
  return inOrder(day.people).map((who) => {
    const own = marks.get(who.athleteId) ?? [];
    return { who, tests: testCodes.map((test) => cellOf(day, who, test, own)) };
  });
}

function cellOf(day: SummaryDay, who: SummaryPerson, test: TestCode, own: readonly SummaryMark[]): RollCell {
  const { variants } = protocolOf(test);
  const marks = own
    .filter((mark) => mark.test === test)
    .sort((a, b) => variants.indexOf(a.variant) - variants.indexOf(b.variant));
  return { test, marks, gap: gapOf(day, who, test, marks) };
}

/** Sorts people by league, then name, then number, ignoring case and accents. */
export function inOrder<Person extends SummaryPerson>(people: readonly Person[]): Person[] {
  return people
    .map((who) => ({ who, key: [fold(who.league), fold(who.name), who.number] }))
    .sort((a, b) => compare(a.key, b.key) || a.who.athleteId - b.who.athleteId)
    .map(({ who }) => who);
}

/** Compares by code units, not by a language: the same order on every computer. */
function compare(a: readonly string[], b: readonly string[]): number {
  const at = a.findIndex((part, index) => part !== b[index]);
  if (at < 0) return 0;
  return (a[at] ?? "") < (b[at] ?? "") ? -1 : 1;
}
