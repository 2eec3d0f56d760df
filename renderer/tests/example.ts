import type { Mark } from "../../electron/domain/tests/protocol.ts";

/** The value of a mark that is complete: each example is one by the way it is made. */
export function completeValue(mark: Mark): number {
  if (mark.state !== "complete") throw new Error("An example has to amount to a mark.");
  return mark.value;
}
