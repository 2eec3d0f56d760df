import { expect, test } from "vitest";
import { placeTold } from "../../../renderer/parts/marks/placeTold.ts";

test.each([
  [0, 100, "anywhere"],
  [11, 94, "wide"],
  [0, 61, "wide"],
  [39, 100, "wide"],
  [0, 60, "bottom"],
  [40, 100, "top"],
  [20, 80, "band"],
] as const)("a place of %i to %i in every hundred is told as: %s", (low, high, told) => {
  expect(placeTold({ low, high })).toBe(told);
});
