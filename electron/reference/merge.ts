import { mkdir } from "node:fs/promises";
import { dirname } from "node:path";
import { protocolOf, testCodes } from "../domain/tests/registry.ts";
import { inUnit } from "../domain/units.ts";
import type { Sentence } from "../domain/words.ts";
import { writeWholeFiles } from "../files/whole.ts";
import { writeSheet } from "../sheets/write.ts";
import type { MergeArguments } from "./arguments.ts";
import { readFolder } from "./bundles.ts";
import { openEngine } from "./engine.ts";
import type { PercentileRow } from "./percentiles.ts";

/** The result of a merge. */
export interface Merged {
  readonly bundles: number;
  readonly marks: number;
  readonly keptBack: number;
  /** Number of groups with at least twenty marks. */
  readonly groups: number;
}

/**
 * Merges all bundles of a folder into one sheet of percentiles, one bundle in memory at a time. Refused ones are
 * reported as they come. Without any good one nothing is written.
 */
export async function merge(
  { folder, out }: MergeArguments,
  keepBack: (name: string, why: Sentence) => void,
): Promise<Merged> {
  const engine = await openEngine();
  try {
    let [bundles, marks, keptBack] = [0, 0, 0];
    for await (const read of readFolder(folder)) {
      if ("keptBack" in read) {
        keptBack += 1;
        keepBack(read.name, read.keptBack);
        continue;
      }
      engine.add(bundles, read.bundle.marks);
      bundles += 1;
      marks += read.bundle.marks.reduce((sum, { count }) => sum + count, 0);
    }
    if (bundles === 0) return { bundles, marks, keptBack, groups: 0 };
    const rows = await engine.percentiles();
    await mkdir(dirname(out), { recursive: true });
    await writeWholeFiles([{ path: out, content: percentilesSheet(rows) }]);
    return { bundles, marks, keptBack, groups: new Set(rows.map(groupOf)).size };
  } finally {
    await engine.close();
  }
}

const headers = [
  ...["test", "variant", "fingerprint", "category", "age_band", "percentile"],
  ...["low", "high", "unit", "better", "n", "bundles"],
];

/** Makes a sheet of percentiles, a row each, by test; bounds in the test's unit, empty where open. */
function percentilesSheet(rows: readonly PercentileRow[]): string {
  // The query has sorted the rest, and this keeps that order.
  const inOrder = rows.toSorted((a, b) => testCodes.indexOf(a.test) - testCodes.indexOf(b.test));
  return writeSheet(
    headers,
    inOrder.map(({ test, variant, fingerprint, category, age_band, percentile, low, high, n, bundles }) => {
      const { grain, better } = protocolOf(test);
      const [from, to] = [low, high].map((bound) => (bound === null ? null : inUnit(grain, bound)));
      return [
        ...[test, variant, fingerprint, category, age_band, percentile],
        ...[from ?? null, to ?? null, grain.unit, better, n, bundles],
      ];
    }),
  );
}

function groupOf({ fingerprint, category, age_band }: PercentileRow): string {
  return JSON.stringify([fingerprint, category, age_band]);
}
