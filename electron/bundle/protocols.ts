import { fingerprint } from "../domain/tests/fingerprint.ts";
import { protocolOf, rulesVersion, testCodes } from "../domain/tests/registry.ts";
import type { DayProtocol } from "../store/tables/days.ts";
import { jsonFile, type TextFile } from "./contents.ts";

/** Makes the file of each test's rules: only marks of equal fingerprints compare when bundles are merged. */
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
