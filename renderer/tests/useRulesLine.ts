import type { TestCode } from "../../electron/domain/tests/registry.ts";
import { faceOf, readParameters, useTexts } from "./registry.ts";

/** Returns a writer that describes a test's rules in one line. */
export function useRulesLine(): (test: TestCode, parameters: unknown) => string {
  const textsOf = useTexts();
  return (test, parameters) => faceOf(test).summary(textsOf(test), readParameters(test, parameters));
}
