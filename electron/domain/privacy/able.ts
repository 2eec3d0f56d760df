import { type TestCode, testCodes } from "../tests/registry.ts";
import type { Able, Candidate, HoldReason, Suppressed } from "./rule.ts";

/** Marks that may be released, in an order independent of the input's, and those withheld on their own account. */
export interface Sorted {
  readonly able: readonly Able[];
  readonly suppressed: readonly Suppressed[];
}

/** Keeps complete marks with consent, at most one per athlete, test and variant. */
export function sortOut(candidates: readonly Candidate[]): Sorted {
  const taken = new Set<string>();
  const able: Able[] = [];
  const held: Withheld[] = [];
  for (const candidate of inFixedOrder(candidates)) {
    const { mark, consent: _consent, ...rest } = candidate;
    const reason = ownReason(candidate, taken);
    if (reason !== null || mark.state !== "complete")
      held.push({ ...rest, reason: reason ?? "not-complete" });
    else {
      taken.add(placeOf(candidate));
      able.push({ ...rest, value: mark.value });
    }
  }
  return { able, suppressed: countWithheld(held) };
}

/** Returns the reason to withhold a candidate on its own account; `taken` holds the places already filled. */
function ownReason(candidate: Candidate, taken: ReadonlySet<string>): HoldReason | null {
  if (candidate.consent !== "given") return candidate.consent;
  if (candidate.mark.state !== "complete") return "not-complete";
  return taken.has(placeOf(candidate)) ? "repeated" : null;
}

function placeOf({ athlete, test, variant }: Candidate): string {
  return JSON.stringify([athlete, test, variant]);
}

/** A withheld mark and its reason. */
export interface Withheld {
  readonly reason: HoldReason;
  readonly athlete: number;
  readonly test: TestCode;
  readonly variant: string;
}

/** Returns the marks of athletes who would be left alone, as withheld for that reason. */
export function asLeftAlone(able: readonly Able[], alone: ReadonlySet<number>): Withheld[] {
  return able.filter(({ athlete }) => alone.has(athlete)).map((mark) => ({ ...mark, reason: "left-alone" }));
}

/** Counts withheld marks by reason, test and variant. */
export function countWithheld(held: readonly Withheld[]): Suppressed[] {
  const places = Map.groupBy(held, ({ reason, test, variant }) => JSON.stringify([reason, test, variant]));
  return [...places.values()].flatMap((marks) => {
    const athletes = [...new Set(marks.map(({ athlete }) => athlete))];
    return marks.slice(0, 1).map(({ reason, test, variant }) => ({
      reason,
      count: marks.length,
      athletes,
      where: { test, variant },
    }));
  });
}

/** Groups marks by test and variant, in the order of the tests. */
export function tablesOf<Row extends { readonly test: TestCode; readonly variant: string }>(
  rows: readonly Row[],
): { readonly test: TestCode; readonly variant: string; readonly rows: readonly Row[] }[] {
  const tables = Map.groupBy(rows, ({ test, variant }) => JSON.stringify([testCodes.indexOf(test), variant]));
  return [...tables.entries()]
    .sort(([a], [b]) => byText(a, b))
    .flatMap(([, of]) => of.slice(0, 1).map(({ test, variant }) => ({ test, variant, rows: of })));
}

export function byText(a: string, b: string): number {
  return a < b ? -1 : Number(a > b);
}

function inFixedOrder(candidates: readonly Candidate[]): Candidate[] {
  const key = ({ test, mark, ...rest }: Candidate) =>
    JSON.stringify([
      ...[testCodes.indexOf(test), rest.variant, rest.ageBand, rest.category, rest.leagueSize, rest.quarter],
      ...[rest.athlete, rest.consent, mark.state, mark],
    ]);
  return candidates
    .map((candidate) => ({ candidate, key: key(candidate) }))
    .sort((a, b) => byText(a.key, b.key))
    .map(({ candidate }) => candidate);
}
