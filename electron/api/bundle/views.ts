import { boundsOf, unitOf } from "../../bundle/sheets.ts";
import { holdReasons, type Suppressed } from "../../domain/privacy/rule.ts";
import type { Day } from "../../store/tables/days.ts";
import type { Export, LoggedExport } from "../../store/tables/exports.ts";
import type { Prepared } from "./prepare.ts";
import { testViews } from "./test-views.ts";

/**
 * Returns everything to be shared and, for the organiser's eyes, the withheld marks and the risk without protection.
 */
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
