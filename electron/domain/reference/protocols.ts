import { z } from "zod";
import { fingerprint } from "../tests/fingerprint.ts";
import { parseParameters, protocolOf, rulesVersion, type TestCode, testCodes } from "../tests/registry.ts";
import { sentence } from "../words.ts";
import type { BundleTest } from "./bundle.ts";
import { protocolsName } from "./descriptor.ts";
import { parseJson } from "./json.ts";
import { refused, shown, unreadable } from "./refused.ts";

const schema = z.object({
  scoringRules: z.int(),
  tests: z
    .array(
      z.object({
        test: z.string().max(100),
        unit: z.string().max(100),
        smallestStep: z.number(),
        better: z.string().max(100),
        parameters: z.unknown(),
        variants: z
          .array(z.object({ variant: z.string().max(100), fingerprint: z.string().max(10_000) }))
          .max(10),
      }),
    )
    .max(20),
});

/** The rules whose bundles are read. Those before differ in the grain of a height alone, and marks are told in units. */
const readable: readonly number[] = [1, 2, rulesVersion];

type Told = z.infer<typeof schema>["tests"][number];

/**
 * Reads protocols.json: each variant of each test with its fingerprint, which is recomputed from the parameters, so
 * that no marks can pass for ones by other rules.
 * @throws Refusal `bad-input` for an unknown test, other rules of scoring, or parameters that contradict the
 * fingerprint.
 */
export function readProtocols(text: string): BundleTest[] {
  const { data } = schema.safeParse(parseJson(protocolsName, text));
  if (data === undefined) throw unreadable(protocolsName);
  if (!readable.includes(data.scoringRules)) throw refused(sentence("reference.scoring"));
  const tests = data.tests.map((told) => [codeOf(told.test), told] as const);
  if (new Map(tests).size !== tests.length) throw unreadable(protocolsName);
  return tests.flatMap(([code, told]) => variantsOf(code, told));
}

/** @throws Refusal `bad-input` for a test that this program does not know. */
function codeOf(test: string): TestCode {
  const code = testCodes.find((each) => each === test);
  if (code === undefined) throw refused(sentence("reference.unknownTest", { test: shown(test) }));
  return code;
}

function variantsOf(test: TestCode, told: Told): BundleTest[] {
  const { grain, better, variants } = protocolOf(test);
  const steps = [grain.perUnit, grain.earlier ?? grain.perUnit].map((perUnit) => 1 / perUnit);
  const isSame = told.unit === grain.unit && steps.includes(told.smallestStep) && told.better === better;
  const { data: parameters } = parseParameters(test, told.parameters);
  if (!isSame || parameters === undefined) throw unreadable(protocolsName);
  const names = told.variants.map(({ variant }) => variant);
  if (new Set(names).size !== names.length || names.some((name) => !variants.includes(name))) {
    throw unreadable(protocolsName);
  }
  return told.variants.map(({ variant, fingerprint: text }) => {
    const own = fingerprint(test, variant, parameters);
    if (own !== text) throw refused(sentence("reference.contradicts", { test }));
    return { test, variant, fingerprint: own };
  });
}
