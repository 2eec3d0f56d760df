import type { LengthUnit } from "./protocol.ts";

const steps: Readonly<Record<LengthUnit, readonly number[]>> = {
  cm: [1, 2, 5, 10, 20, 50].map((centimetres) => centimetres * 10),
  in: [1, 2, 5, 10, 20].map((inches) => inches * 25.4),
};

/** Returns the steps between ticks of a length axis, in mm; inches are rarely whole millimetres. */
export function lengthSteps(lengths: LengthUnit): readonly number[] {
  return steps[lengths];
}
