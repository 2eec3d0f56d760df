import { boundsOf, unitOf } from "../../bundle/sheets.ts";
import { tablesOf } from "../../domain/privacy/able.ts";
import type { MarkBounds } from "../../domain/privacy/coding.ts";
import { ladders } from "../../domain/privacy/ladder.ts";
import type { TestSummary } from "../../domain/privacy/publish.ts";
import { holdReasons, type ReleaseDecision, type Suppressed } from "../../domain/privacy/rule.ts";
import { protocolOf, type TestCode } from "../../domain/tests/registry.ts";
import { inUnit } from "../../domain/units.ts";
import type { Day } from "../../store/tables/days.ts";
import type { Export, LoggedExport } from "../../store/tables/exports.ts";
import type { Prepared } from "./prepare.ts";

/** Returns what is shared and, for the organiser alone, the withheld marks and the risk without protection. */
export function previewOf(day: Day, prepared: Prepared, exports: readonly Export[]) {
  const { contents, athletes, before, file } = prepared;
  return {
    day: dayOf(day),
    ...{ quarter: contents.quarter, demo: contents.demo, kind: contents.kind },
    ...{ k: contents.strictness.k, kReached: contents.likeness.k, lReached: contents.likeness.l },
    athletes,
    /** As in the file, in the same order. */
    rows: contents.rows.map(({ id, quasi, marks }) => ({
      ...{ id, ...quasi },
      marks: marks.map(({ test, variant, ...bounds }) => ({
        ...{ test, variant, ...boundsOf(test, bounds), unit: unitOf(test) },
      })),
    })),
    tests: testViews(prepared),
    held: heldBack(contents.suppressed),
    before: riskOf(before),
    after: riskOf(contents),
    /** The bundle of this day that was shared, and whether this is the same file: no other one can be shared. */
    earlier: earlierOf(exports, file.sha256),
    files: file.files.map(({ name, text }) => ({ name, bytes: Buffer.byteLength(text), text })),
    ...{ name: file.name, bytes: file.bytes.length, sha256: file.sha256 },
  };
}

function dayOf({ id, date, title, state }: Day) {
  return { id, date, title, state };
}

/** The risk: unique rows, and a neighbour's success with them. Shares are from 0 to 1. */
function riskOf({ risk, attack, subtraction }: Prepared["before"]) {
  return {
    ...{
      rows: risk.records,
      classes: risk.classes,
      unique: risk.unique,
      largest: risk.largest,
      mean: risk.mean,
    },
    ...{ bibs: attack.bibs, bibsCertain: attack.certain, bibsExposed: attack.exposed },
    ...{ likeliestGuess: attack.largest, matchedOnAverage: attack.expected },
    /** Marks of hidden athletes, and those found by removing everybody else. */
    ...{ hiddenMarks: subtraction.marks, hiddenFound: subtraction.found },
  };
}

/** Returns the file already shared if it is this one, else the newest one. */
function earlierOf(exports: readonly Export[], sha256: string) {
  const found = exports.find((entry) => entry.sha256 === sha256) ?? exports[0];
  return found === undefined ? null : { at: found.at, k: found.k, same: found.sha256 === sha256 };
}

/** Counts marks and athletes by reason, in the order in which the reasons are checked. */
function heldBack(suppressed: readonly Suppressed[]) {
  return holdReasons.flatMap((reason) => {
    const places = suppressed.filter((held) => held.reason === reason);
    const marks = places.reduce((sum, { count }) => sum + count, 0);
    const athletes = new Set(places.flatMap((held) => held.athletes)).size;
    return marks === 0 ? [] : [{ reason, marks, athletes }];
  });
}

/** Returns the shared bundles, newest first, each with its day; `saved` is false when it was saved nowhere. */
export function logOf(exports: readonly LoggedExport[], days: readonly Day[]) {
  return exports.map(({ id: entry, at, dayId, k, sha256, saved }) => {
    const day = days.find(({ id }) => id === dayId);
    return { id: entry, at, day: day === undefined ? null : dayOf(day), k, sha256, saved };
  });
}

/**
 * Returns every test and variant with a mark that could be released, in the order of the tests: in its own unit, its
 * marks that could be released (`able`) and that are (`told`), and their distribution before and after.
 */
function testViews({ able, contents }: Prepared) {
  const told = tablesOf(contents.rows.flatMap(({ marks }) => marks));
  return tablesOf(able).map(({ test, variant, rows }) => {
    const isThis = (one: { readonly test: TestCode; readonly variant: string }) =>
      one.test === test && one.variant === variant;
    const { grain, better } = protocolOf(test);
    const marks = told.find(isThis)?.rows ?? [];
    const decision = contents.decisions.find(({ codings }) => codings.some(isThis));
    const [from, to] = ladders[test].usual;
    return {
      ...{ test, variant, unit: unitOf(test), better, able: rows.length, told: marks.length },
      ...howTold(test, decision?.codings.find(isThis)?.coding ?? null, decision),
      /** The exact marks, only for this screen. */
      marks: rows.map(({ value }) => inUnit(grain, value)).sort((a, b) => a - b),
      /** The reported parts, low to high, with the number of marks in each. */
      parts: partsOf(test, marks),
      quartiles: quartilesOf(contents.summaries.find(isThis)),
      usual: { from: inUnit(grain, from), to: inUnit(grain, to) },
    };
  });
}

/** The level of each quasi-identifier (0: exact), and the step; null where nothing is reported, or in two halves. */
function howTold(
  test: TestCode,
  coding: ReleaseDecision["codings"][number]["coding"],
  decision: ReleaseDecision | undefined,
) {
  if (coding === null || decision === undefined) return { levels: null, step: null };
  const step = coding.from > coding.below ? inUnit(protocolOf(test).grain, coding.step) : null;
  return { levels: decision.levels, step };
}

function partsOf(test: TestCode, marks: readonly MarkBounds[]) {
  const parts = Map.groupBy(marks, ({ low, high }) => JSON.stringify([low, high]));
  return [...parts.values()]
    .flatMap((alike) => alike.slice(0, 1).map((mark) => ({ ...boundsOf(test, mark), n: alike.length })))
    .sort((a, b) => (a.low ?? -Infinity) - (b.low ?? -Infinity));
}

function quartilesOf(summary: TestSummary | undefined) {
  if (summary === undefined || summary.quartiles === null) return null;
  const { lower, median, upper } = summary.quartiles;
  const write = (bounds: typeof lower) => boundsOf(summary.test, bounds);
  return { lower: write(lower), median: write(median), upper: write(upper) };
}
