import { z } from "zod";
import { holdReasons, type Suppressed } from "../../domain/privacy/rule.ts";
import { type TestCode, testCodes } from "../../domain/protocols/protocol.ts";
import { protocolOf } from "../../domain/protocols/registry.ts";
import type { Day } from "../../store/days.ts";
import type { Export } from "../../store/exports.ts";
import { markLine, summaryLine } from "./package/sheets.ts";
import type { Prepared } from "./prepare.ts";

const testSchema = z.enum(testCodes);
const dayView = z.object({
  id: z.int(),
  date: z.string(),
  title: z.string(),
  state: z.enum(["planned", "open", "closed"]),
});

export const previewView = z.object({
  day: dayView,
  quarter: z.string(),
  demo: z.boolean(),
  k: z.int(),
  kReached: z.int().nullable(),
  /** Whose marks would leave; the file does not say how many they are. */
  athletes: z.int(),
  /** As in marks.csv, in its order. */
  rows: z.array(
    z.object({
      id: z.string(),
      test: testSchema,
      variant: z.string(),
      ageBand: z.string(),
      category: z.string(),
      mark: z.number(),
      unit: z.string(),
    }),
  ),
  summaries: z.array(
    z.object({
      test: testSchema,
      variant: z.string(),
      unit: z.string(),
      better: z.enum(["higher", "lower"]),
      n: z.int(),
      lower: z.number().nullable(),
      median: z.number().nullable(),
      upper: z.number().nullable(),
    }),
  ),
  held: z.array(z.object({ reason: z.enum(holdReasons), rows: z.int(), athletes: z.int() })),
  smallClasses: z.array(
    z.object({
      test: testSchema,
      variant: z.string(),
      ageBand: z.string(),
      category: z.string(),
      athletes: z.int(),
    }),
  ),
  files: z.array(z.object({ name: z.string(), bytes: z.int(), text: z.string() })),
  name: z.string(),
  bytes: z.int(),
  sha256: z.string(),
});

export const logView = z.array(
  z.object({ at: z.string(), day: dayView.nullable(), k: z.int(), sha256: z.string() }),
);

/** Everything that would leave, and for the organiser's eyes also what stays. */
export function previewOf(day: Day, { contents, athletes, file }: Prepared): z.infer<typeof previewView> {
  return {
    day: dayOf(day),
    quarter: contents.quarter,
    demo: contents.demo,
    k: contents.k,
    kReached: contents.kReached,
    athletes,
    rows: contents.rows.map((row) => {
      const { id, variant, age_band, category, mark, unit } = markLine(row);
      return { id, test: row.test, variant, ageBand: age_band, category, mark, unit };
    }),
    summaries: contents.summaries.map((summary) => {
      const { variant, unit, n, lower_quartile, median, upper_quartile } = summaryLine(summary);
      const { better } = protocolOf(summary.test);
      const middle = { lower: lower_quartile, median, upper: upper_quartile };
      return { test: summary.test, variant, unit, better, n, ...middle };
    }),
    held: heldBack(contents.suppressed),
    smallClasses: smallClasses(contents.suppressed),
    files: file.files.map(({ name, text }) => ({ name, bytes: Buffer.byteLength(text), text })),
    name: file.name,
    bytes: file.bytes.length,
    sha256: file.sha256,
  };
}

function dayOf({ id, date, title, state }: Day): z.infer<typeof dayView> {
  return { id, date, title, state };
}

/** Rows and different athletes by reason, in the order in which a row meets the reasons. */
function heldBack(suppressed: readonly Suppressed[]): z.infer<typeof previewView>["held"] {
  return holdReasons.flatMap((reason) => {
    const places = suppressed.filter((held) => held.reason === reason);
    const rows = places.reduce((sum, { count }) => sum + count, 0);
    const athletes = new Set(places.flatMap((held) => held.athletes)).size;
    return rows === 0 ? [] : [{ reason, rows, athletes }];
  });
}

function smallClasses(suppressed: readonly Suppressed[]): z.infer<typeof previewView>["smallClasses"] {
  const order = (test: TestCode) => testCodes.indexOf(test);
  return suppressed
    .filter(({ reason }) => reason === "small-class")
    .map(({ where, athletes }) => ({
      test: where.test,
      variant: where.variant,
      ageBand: where.ageBand ?? "",
      category: where.category ?? "",
      athletes: athletes.length,
    }))
    .sort((a, b) => order(a.test) - order(b.test));
}

/** What left, newest first, each with its day. */
export function logOf(exports: readonly Export[], days: readonly Day[]): z.infer<typeof logView> {
  return exports.map(({ at, dayId, k, sha256 }) => {
    const day = days.find(({ id }) => id === dayId);
    return { at, day: day === undefined ? null : dayOf(day), k, sha256 };
  });
}
