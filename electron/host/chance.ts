import { randomInt } from "node:crypto";

/** Returns a uniform number in [0, 1), from the system's own randomness. */
export function unpredictable(): number {
  const steps = 2 ** 48 - 1;
  return randomInt(steps) / steps;
}
