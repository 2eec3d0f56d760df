import { z } from "zod";
import { boundsOf, unitOf } from "../../bundle/sheets.ts";
import { tablesOf } from "../../domain/privacy/able.ts";
import type { MarkBounds } from "../../domain/privacy/coding.ts";
import { ladders } from "../../domain/privacy/ladder.ts";
import type { TestSummary } from "../../domain/privacy/publish.ts";
import type { ReleaseDecision } from "../../domain/privacy/rule.ts";
import { protocolOf, type TestCode, testCodes } from "../../domain/tests/registry.ts";
import { inUnit } from "../../domain/units.ts";
import type { Prepared } from "./prepare.ts";

const boundsView = z.object({ low: z.number().nullable(), high: z.number().nullable() });

/**
 * One test and variant in its own unit: its marks that could be released, their coding, and their distribution before
 * and after.
 */
export const testView = z.object({
  test: z.enum(testCodes),
  variant: z.string(),
  unit: z.string(),
  better: z.enum(["higher", "lower"]),
  /** Number of marks that could be released, and that are. */
  able: z.int(),
  told: z.int(),
  /** The level of each quasi-identifier (0: exact), and the step; null where nothing is reported. */
  levels: z.object({ quarter: z.int(), category: z.int(), ageBand: z.int(), leagueSize: z.int() }).nullable(),
  /** Null where the marks are reported in two halves, without a step. */
  step: z.number().nullable(),
  /** The exact marks, only for this screen. */
  marks: z.array(z.number()),
  /** The reported parts, low to high, with the number of marks in each. */
  parts: z.array(boundsView.extend({ n: z.int() })),
  quartiles: z.object({ lower: boundsView, median: boundsView, upper: boundsView }).nullable(),
  usual: z.object({ from: z.number(), to: z.number() }),
});

export type TestView = z.infer<typeof testView>;

/** Returns every test and variant with a mark that could be released, in the order of the tests. */
export function testViews({ able, contents }: Prepared): TestView[] {
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
      marks: rows.map(({ value }) => inUnit(grain, value)).sort((a, b) => a - b),
      parts: partsOf(test, marks),
      quartiles: quartilesOf(contents.summaries.find(isThis)),
      usual: { from: inUnit(grain, from), to: inUnit(grain, to) },
    };
  });
}

function howTold(
  test: TestCode,
  coding: ReleaseDecision["codings"][number]["coding"],
  decision: ReleaseDecision | undefined,
): Pick<TestView, "levels" | "step"> {
  if (coding === null || decision === undefined) return { levels: null, step: null };
  const step = coding.from > coding.below ? inUnit(protocolOf(test).grain, coding.step) : null;
  return { levels: decision.levels, step };
}

function partsOf(test: TestCode, marks: readonly MarkBounds[]): TestView["parts"] {
  const parts = Map.groupBy(marks, ({ low, high }) => JSON.stringify([low, high]));
  return [...parts.values()]
    .flatMap((alike) => alike.slice(0, 1).map((mark) => ({ ...boundsOf(test, mark), n: alike.length })))
    .sort((a, b) => (a.low ?? -Infinity) - (b.low ?? -Infinity));
}

function quartilesOf(summary: TestSummary | undefined): TestView["quartiles"] {
  if (summary === undefined || summary.quartiles === null) return null;
  const { lower, median, upper } = summary.quartiles;
  const write = (bounds: typeof lower) => boundsOf(summary.test, bounds);
  return { lower: write(lower), median: write(median), upper: write(upper) };
}
