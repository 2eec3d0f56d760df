import { grainsPerCentimetre, grainsPerReading } from "../../domain/length.ts";
import type { LengthUnit } from "../../domain/tests/protocol.ts";
import { protocolOf, type TestCode } from "../../domain/tests/registry.ts";
import type { Quantity } from "./schemas.ts";

/** Four readings of a tape in inches: 2.54. */
const centimetresPerInch = (4 * grainsPerReading.in) / grainsPerCentimetre;

/** Formats grains, whole or not, in the test's unit with at most so many decimals (inches: two). */
export function quantityOf(test: TestCode, grains: number, lengths: LengthUnit, decimals = 1): Quantity {
  const { unit, perUnit } = protocolOf(test).grain;
  const amount = grains / perUnit;
  if (unit !== "cm" || lengths === "cm") return { number: rounded(amount, decimals), unit };
  return { number: rounded(amount / centimetresPerInch, 2), unit: "in" };
}

function rounded(amount: number, decimals: number): string {
  return String(Number(amount.toFixed(decimals)));
}
