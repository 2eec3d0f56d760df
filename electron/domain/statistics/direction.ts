import { protocols, type TestCode } from "../tests/registry.ts";
import { chanceOfGain, gain, startingTypicalErrors, typicalError } from "./change.ts";

/**
 * Returns the chance, from 0.5 to 1, that the true change has the observed direction, for better or for worse. It is
 * the number behind the verdict. Marks are in grains.
 */
export function chanceOfDirection(
  test: TestCode,
  from: number,
  to: number,
  error = startingTypicalErrors[test],
): number {
  const change = Math.abs(gain(protocols[test].better, from, to));
  return chanceOfGain(change, typicalError(test, (from + to) / 2, error));
}
