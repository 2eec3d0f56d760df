import type { TestCode } from "../../electron/domain/tests/registry.ts";

/**
 * The tests that the invented leagues have done, in the order of a day. A test that the program learns is not among them
 * until somebody invents marks for it here: that makes other sheets, byte for byte.
 */
export const doneTests = [
  "push-up",
  "agility",
  "vertical",
  "core",
  "endurance",
] as const satisfies TestCode[];
export type DoneTest = (typeof doneTests)[number];
