import { type TypicalError, typicalError } from "../statistics/change.ts";
import type { TestCode } from "../tests/registry.ts";

/** Typical errors beyond which two readings of one athlete are more likely a slip than a difference. Ours, no source. */
const farErrors = 4;

/** Returns whether two readings of one athlete, in grains, lie so far apart that one of them is asked about. */
export function isFarApart(test: TestCode, one: number, other: number, error: TypicalError): boolean {
  return Math.abs(one - other) > farErrors * typicalError(test, (one + other) / 2, error);
}
