import type { TestCode } from "../../electron/domain/tests/registry.ts";
import { faceOf, readParameters, useTexts } from "./registry.ts";

/** How a test is held, in one line. */
export function useRulesLine(): (test: TestCode, parameters: unknown) => string {
  const textsOf = useTexts();
  return (test, parameters) => faceOf(test).summary(textsOf(test), readParameters(test, parameters));
}
