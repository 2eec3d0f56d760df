import { grainsPerCentimetre, grainsPerReading } from "../length.ts";
import type { LengthUnit } from "./protocol.ts";

const steps: Readonly<Record<LengthUnit, readonly number[]>> = {
  cm: [1, 2, 5, 10, 20, 50].map((centimetres) => centimetres * grainsPerCentimetre),
  in: [1, 2, 5, 10, 20].map((inches) => inches * 4 * grainsPerReading.in),
};

/** Returns the steps between ticks of a length axis, in grains. */
export function lengthSteps(lengths: LengthUnit): readonly number[] {
  return steps[lengths];
}
