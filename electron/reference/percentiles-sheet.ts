import { everybody, leastOfGroup } from "../domain/reference-table/table.ts";
import { protocolOf, testCodes } from "../domain/tests/registry.ts";
import { inUnit } from "../domain/units.ts";
import { writeSheet } from "../sheets/write.ts";
import type { Database } from "./database.ts";
import { percentilesIn, sizesIn } from "./groups.ts";
import { steps } from "./steps.ts";

const headers = [
  ...["test", "variant", "fingerprint", "category", "age_band", "percentile"],
  ...["low", "high", "unit", "better", "n", "bundles"],
];

const percentiles = [5, 10, 25, 50, 75, 90, 95];

/**
 * Makes a sheet with a row for each percentile of every category and age band with at least 20 marks, all of which count
 * the same; bounds in the test's unit, empty where open. Every bundle is a hall in `mark`.
 */
export async function percentilesSheet(database: Database): Promise<{ content: string; groups: number }> {
  await database.run(steps.groups);
  const sizes = await sizesIn(database);
  await database.run(steps.weigh);
  const told = await percentilesIn(database, percentiles);
  const groups = [...sizes.values()].filter(
    ({ category, age_band, total }) =>
      category !== everybody && age_band !== everybody && total >= leastOfGroup.marks,
  );
  // The query has sorted the rest, and this keeps that order.
  const inOrder = groups.toSorted((a, b) => testCodes.indexOf(a.test) - testCodes.indexOf(b.test));
  const rows = inOrder.flatMap(({ grp, test, variant, fingerprint, category, age_band, total, halls }) => {
    const { grain, better } = protocolOf(test);
    const inUnits = (bound: number | null) => (bound === null ? null : inUnit(grain, bound));
    return (told.get(grp) ?? []).map(({ percentile, low, high }) => [
      ...[test, variant, fingerprint, category, age_band, percentile],
      ...[inUnits(low), inUnits(high), grain.unit, better, total, halls],
    ]);
  });
  return { content: writeSheet(headers, rows), groups: groups.length };
}
