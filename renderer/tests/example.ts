import type { Mark } from "../../electron/domain/tests/protocol.ts";

/** Returns a complete mark's value: every example is made complete. */
export function completeValue(mark: Mark): number {
  if (mark.state !== "complete") throw new Error("An example has to amount to a mark.");
  return mark.value;
}
