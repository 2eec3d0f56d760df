import type { LengthUnit } from "../../domain/tests/protocol.ts";
import { protocolOf, type TestCode } from "../../domain/tests/registry.ts";
import type { Gain } from "./schemas.ts";

/** Formats a gain (grains, above zero) for people: in the test's unit, and below a minute in plain seconds. */
export function writeGain(test: TestCode, gain: number, lengths: LengthUnit): Gain {
  const { grain, write } = protocolOf(test);
  if (grain.unit === "s" && gain < 60 * grain.perUnit) {
    return { number: String(gain / grain.perUnit), unit: "s" };
  }
  const { number, unit } = write(gain, lengths);
  // Every complete mark has a unit; only an incomplete one is formatted without.
  if (unit === "") throw new Error(`A gain in ${test} was written without a unit.`);
  return { number, unit };
}
