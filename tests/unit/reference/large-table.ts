import { handInAgeBands, handInCategories } from "../../../electron/domain/reference-table/hand-in-coding.ts";
import {
  everybody,
  type GroupOfMarks,
  leastOfGroup,
  percentilesTold,
  type ReferenceTable,
} from "../../../electron/domain/reference-table/table.ts";
import { normalQuantile } from "../../../electron/domain/statistics/normal.ts";
import { fingerprint } from "../../../electron/domain/tests/fingerprint.ts";
import {
  defaultParameters,
  definitionOf,
  protocolOf,
  type TestCode,
  testCodes,
} from "../../../electron/domain/tests/registry.ts";

const bands = [...handInAgeBands.slice(2, 13), everybody];
const categories = [...handInCategories.slice(0, 3), everybody] as const;

/** A group whose percentiles are normal about the test's middling mark, in bounds of the ladder's finest step. */
function groupOf(test: TestCode, variant: string, at: number): GroupOfMarks {
  const category = categories[at % categories.length] ?? everybody;
  const ageBand = bands[Math.floor(at / categories.length)] ?? everybody;
  const { middling, ladder } = definitionOf(test).figures;
  const [step] = ladder.steps;
  const marks = category === everybody && ageBand === everybody ? 48_213 : 40 + 37 * at;
  const mean = middling * (1 + (at % 7) / 50);
  const percentiles = percentilesTold
    .filter((percentile) => Math.min(percentile, 100 - percentile) * marks >= 100 * leastOfGroup.beyond)
    .map((percentile) => {
      const low = Math.floor((mean * (1 + 0.22 * normalQuantile(percentile / 100))) / step) * step;
      return { percentile, low, high: low + step };
    });
  return {
    ...{ test, variant, fingerprint: fingerprint(test, variant, defaultParameters(test)), category, ageBand },
    ...{ marks, halls: 3 + (at % 60), countsAs: Math.ceil(marks / 3), from: "2024-Q1", to: "2026-Q3" },
    percentiles,
  };
}

/** A table with every group that athletes from 15 to 69 can look up, as 20,000 bundles have: the page is never larger. */
export const largeTable: ReferenceTable = {
  publisher: 'The harbour table </script><b onclick="x">',
  publicKey: "A".repeat(43),
  ...{ made: "2026-11-01", validUntil: "2099-11-01" },
  bundles: [],
  groups: testCodes.flatMap((test) =>
    protocolOf(test).variants.flatMap((variant) =>
      Array.from({ length: bands.length * categories.length }, (_none, at) => groupOf(test, variant, at)),
    ),
  ),
};
