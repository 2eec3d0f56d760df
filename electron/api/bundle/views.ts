import { z } from "zod";
import { boundsOf, unitOf } from "../../bundle/sheets.ts";
import { bundleKinds, holdReasons, type Suppressed } from "../../domain/privacy/rule.ts";
import { testCodes } from "../../domain/tests/registry.ts";
import type { Day } from "../../store/tables/days.ts";
import type { Export, LoggedExport } from "../../store/tables/exports.ts";
import type { Prepared } from "./prepare.ts";
import { testView, testViews } from "./test-views.ts";

const testSchema = z.enum(testCodes);
const dayView = z.object({
  id: z.int(),
  date: z.string(),
  title: z.string(),
  state: z.enum(["planned", "open", "closed"]),
});

/** The risk: unique rows, and a neighbour's success with them. Shares are from 0 to 1. */
const riskView = z.object({
  rows: z.int(),
  classes: z.int(),
  unique: z.int(),
  largest: z.number(),
  mean: z.number(),
  bibs: z.int(),
  bibsCertain: z.int(),
  bibsExposed: z.int(),
  likeliestGuess: z.number(),
  matchedOnAverage: z.number(),
  /** Marks of hidden athletes, and those found by removing everybody else. */
  hiddenMarks: z.int(),
  hiddenFound: z.int(),
});

const markView = z.object({
  test: testSchema,
  variant: z.string(),
  low: z.number().nullable(),
  high: z.number().nullable(),
  unit: z.string(),
});

export const previewView = z.object({
  day: dayView,
  quarter: z.string(),
  demo: z.boolean(),
  kind: z.enum(bundleKinds),
  k: z.int(),
  kReached: z.int().nullable(),
  lReached: z.int().nullable(),
  /** Number of athletes whose marks are released; the file does not hold it. */
  athletes: z.int(),
  /** As in the file, in the same order. */
  rows: z.array(
    z.object({
      id: z.string(),
      ageBand: z.string(),
      category: z.string(),
      leagueSize: z.string(),
      quarter: z.string(),
      marks: z.array(markView),
    }),
  ),
  tests: z.array(testView),
  held: z.array(z.object({ reason: z.enum(holdReasons), marks: z.int(), athletes: z.int() })),
  before: riskView,
  after: riskView,
  /** The bundle of this day that was shared, and whether this is the same file: no other one can be shared. */
  earlier: z.object({ at: z.string(), k: z.int(), same: z.boolean() }).nullable(),
  files: z.array(z.object({ name: z.string(), bytes: z.int(), text: z.string() })),
  name: z.string(),
  bytes: z.int(),
  sha256: z.string(),
});

export const logView = z.array(
  z.object({
    ...{ id: z.int(), at: z.string(), day: dayView.nullable(), k: z.int(), sha256: z.string() },
    /** False when it was made and then saved nowhere. */
    saved: z.boolean(),
  }),
);

/**
 * Returns everything to be shared and, for the organiser's eyes, the withheld marks and the risk without protection.
 */
export function previewOf(
  day: Day,
  prepared: Prepared,
  exports: readonly Export[],
): z.infer<typeof previewView> {
  const { contents, athletes, before, file } = prepared;
  return {
    day: dayOf(day),
    ...{ quarter: contents.quarter, demo: contents.demo, kind: contents.kind },
    ...{ k: contents.strictness.k, kReached: contents.likeness.k, lReached: contents.likeness.l },
    athletes,
    rows: contents.rows.map(({ id, quasi, marks }) => ({
      ...{ id, ...quasi },
      marks: marks.map((mark) => ({
        ...{ test: mark.test, variant: mark.variant, ...boundsOf(mark.test, mark), unit: unitOf(mark.test) },
      })),
    })),
    tests: testViews(prepared),
    held: heldBack(contents.suppressed),
    before: riskOf(before),
    after: riskOf(contents),
    earlier: earlierOf(exports, file.sha256),
    files: file.files.map(({ name, text }) => ({ name, bytes: Buffer.byteLength(text), text })),
    ...{ name: file.name, bytes: file.bytes.length, sha256: file.sha256 },
  };
}

function dayOf({ id, date, title, state }: Day): z.infer<typeof dayView> {
  return { id, date, title, state };
}

function riskOf({ risk, attack, subtraction }: Prepared["before"]): z.infer<typeof riskView> {
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
    ...{ hiddenMarks: subtraction.marks, hiddenFound: subtraction.found },
  };
}

/** Returns the file already shared if it is this one, else the newest one. */
function earlierOf(exports: readonly Export[], sha256: string): z.infer<typeof previewView>["earlier"] {
  const found = exports.find((entry) => entry.sha256 === sha256) ?? exports[0];
  return found === undefined ? null : { at: found.at, k: found.k, same: found.sha256 === sha256 };
}

/** Counts marks and athletes by reason, in the order in which the reasons are checked. */
function heldBack(suppressed: readonly Suppressed[]): z.infer<typeof previewView>["held"] {
  return holdReasons.flatMap((reason) => {
    const places = suppressed.filter((held) => held.reason === reason);
    const marks = places.reduce((sum, { count }) => sum + count, 0);
    const athletes = new Set(places.flatMap((held) => held.athletes)).size;
    return marks === 0 ? [] : [{ reason, marks, athletes }];
  });
}

/** Returns the shared bundles, newest first, each with its day. */
export function logOf(exports: readonly LoggedExport[], days: readonly Day[]): z.infer<typeof logView> {
  return exports.map(({ id: entry, at, dayId, k, sha256, saved }) => {
    const day = days.find(({ id }) => id === dayId);
    return { id: entry, at, day: day === undefined ? null : dayOf(day), k, sha256, saved };
  });
}
