import { fingerprint } from "../domain/tests/fingerprint.ts";
import { protocolOf, rulesVersion, testCodes } from "../domain/tests/registry.ts";
import type { DayProtocol } from "../store/tables/days.ts";
import { jsonFile, type TextFile } from "./contents.ts";

/** How each test was held: whoever merges bundles may compare marks of equal fingerprints only. */
export function protocolsFile(protocols: readonly DayProtocol[]): TextFile {
  const tests = protocols
    .toSorted((a, b) => testCodes.indexOf(a.test) - testCodes.indexOf(b.test))
    .map(({ test, parameters }) => {
      const { better, grain, variants } = protocolOf(test);
      return {
        test,
        unit: grain.unit,
        smallestStep: 1 / grain.perUnit,
        better,
        parameters,
        variants: variants.map((variant) => ({
          variant,
          fingerprint: fingerprint(test, variant, parameters),
        })),
      };
    });
  return jsonFile("protocols.json", { scoringRules: rulesVersion, tests });
}
