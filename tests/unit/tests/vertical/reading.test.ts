import { expect, test } from "vitest";
import { isWhole, readReach, readTouch } from "../../../../renderer/tests/vertical/reading.ts";

const parameters = { trials: 3 };
const standing = { standingReach: 2190, bodyMass: null };

test.each([
  ["264", "cm", 2640],
  ["264.5", "cm", 2645],
  ["264.", "cm", 2645],
  // 1 in = 25.4 mm: 104.25 in = 2647.95 mm, 8 ft 8 1/2 in = 104.5 in = 2654.3 mm.
  ["104.25", "in", 2648],
  ["8' 8 1/2\"", "in", 2654],
] as const)("a touch of %s in %s is %i mm", (text, unit, mm) => {
  expect(readTouch(text, unit, parameters, standing)).toEqual({ state: "fine", mm });
});

test("a touch below the reach is refused, and one that is hard to believe is asked about", () => {
  expect(readTouch("218", "cm", parameters, standing).state).toBe("refused");
  expect(readTouch("350", "cm", parameters, standing).state).toBe("refused");
  expect(readTouch("300", "cm", parameters, standing)).toMatchObject({ state: "asked", mm: 3000 });
  expect(readTouch("224", "cm", parameters, standing)).toMatchObject({ state: "asked", mm: 2240 });
});

test("an unusual reach is asked about once, and not again with each touch", () => {
  expect(readReach("319", "cm")).toMatchObject({ state: "asked", mm: 3190 });
  expect(readReach("219", "cm")).toEqual({ state: "fine", mm: 2190 });
  const tall = { standingReach: 3190, bodyMass: null };
  expect(readTouch("364", "cm", parameters, tall)).toEqual({ state: "fine", mm: 3640 });
});

test("three digits of centimetres are whole, a half may follow; inches never end by themselves", () => {
  expect(["264", "264.", "264.5", "264.0"].map((text) => isWhole(text, "cm"))).toEqual([
    true,
    true,
    true,
    true,
  ]);
  expect(["", "26", "26.", "2640"].map((text) => isWhole(text, "cm"))).toEqual([false, false, false, false]);
  expect(isWhole("104", "in")).toBe(false);
});
