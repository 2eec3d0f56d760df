import type { LengthUnit } from "../../electron/domain/tests/protocol.ts";
import { protocolOf, type TestCode } from "../../electron/domain/tests/registry.ts";
import { faceOf, useTexts } from "./registry.ts";

/** Returns a writer that says in one line what was seen in an attempt. */
export function useWriteSeen(): (test: TestCode, seen: unknown, lengths: LengthUnit) => string {
  const textsOf = useTexts();
  return (test, seen, lengths) =>
    faceOf(test).seen(textsOf(test), protocolOf(test).attempt.parse(seen), lengths);
}
