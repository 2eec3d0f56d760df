import type { LengthUnit } from "../../electron/domain/tests/protocol.ts";
import { protocolOf, type TestCode } from "../../electron/domain/tests/registry.ts";
import { faceOf, useTexts } from "./registry.ts";

/** Returns a writer that describes an attempt in one line. */
export function useWriteSeen(): (test: TestCode, seen: unknown, lengths: LengthUnit) => string {
  const textsOf = useTexts();
  return (test, seen, lengths) =>
    faceOf(test).seen(textsOf(test), protocolOf(test).attempt.parse(seen), lengths);
}
