import { boundsOf, unitOf } from "../../bundle/sheets.ts";
import { tablesOf } from "../../domain/privacy/able.ts";
import type { MarkBounds } from "../../domain/privacy/coding.ts";
import { ladders } from "../../domain/privacy/ladder.ts";
import type { TestSummary } from "../../domain/privacy/publish.ts";
import type { ReleaseDecision } from "../../domain/privacy/rule.ts";
import { protocolOf, type TestCode } from "../../domain/tests/registry.ts";
import { inUnit } from "../../domain/units.ts";
import type { Prepared } from "./prepare.ts";

/**
 * Returns every test and variant with a mark that could be released, in the order of the tests: in its own unit, its
 * marks that could be released (`able`) and that are (`told`), and their distribution before and after.
 */
export function testViews({ able, contents }: Prepared) {
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
