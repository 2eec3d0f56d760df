import { expect, test } from "vitest";
import { isWhole, readReach, readTouch } from "../../../../renderer/tests/vertical/reading.ts";
import { cm, inches } from "../../../lengths.ts";

const parameters = { trials: 3 };
const standing = { standingReach: cm(219), bodyMass: null };

test.each([
  ["264", "cm", cm(264)],
  ["264.5", "cm", cm(264.5)],
  ["264.", "cm", cm(264.5)],
  ["104.25", "in", inches(104.25)],
  ["8' 8 1/2\"", "in", inches(104.5)],
] as const)("a touch of %s in %s is %j", (text, unit, length) => {
  expect(readTouch(text, unit, parameters, standing)).toEqual({ state: "fine", length });
});

test("a touch below the reach is refused, and one that is hard to believe is asked about", () => {
  expect(readTouch("218", "cm", parameters, standing).state).toBe("refused");
  expect(readTouch("350", "cm", parameters, standing).state).toBe("refused");
  expect(readTouch("300", "cm", parameters, standing)).toMatchObject({ state: "asked", length: cm(300) });
  expect(readTouch("224", "cm", parameters, standing)).toMatchObject({ state: "asked", length: cm(224) });
});

test("an unusual reach is asked about once, and not again with each touch", () => {
  expect(readReach("319", "cm")).toMatchObject({ state: "asked", length: cm(319) });
  expect(readReach("219", "cm")).toEqual({ state: "fine", length: cm(219) });
  const tall = { standingReach: cm(319), bodyMass: null };
  expect(readTouch("364", "cm", parameters, tall)).toEqual({ state: "fine", length: cm(364) });
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
