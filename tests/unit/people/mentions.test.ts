import fc from "fast-check";
import { expect, test } from "vitest";
import { withoutName } from "../../../electron/domain/people/mentions.ts";

test.each([
  ["keyed for Ada Rill, sorry", "Ada Rill", "keyed for […], sorry"],
  ["ADA  rill and áda-rill", "Ada Rill", "[…] and […]"],
  ["Ada Rill's lane", "Ada Rill", "[…]'s lane"],
  ["Adam Rills", "Ada Rill", "Adam Rills"],
  ["Ada ran, Rill too", "Ada Rill", "Ada ran, Rill too"],
  ["Ada Ada Rill", "Ada Rill", "Ada […]"],
  ["knee hurts, said Knee", "Knee", "knee hurts, said […]"],
  ["O'Hara fell", "O’Hara", "[…] fell"],
  ["№ 5 and !!! again", "!!!", "№ 5 and […] again"],
  ["½ Pint drank ½ pint", "½ Pint", "[…] drank […]"],
  ["nothing", "", "nothing"],
  ["", "Ada Rill", ""],
  ["a $& b", "$&", "a […] b"],
])("%j without %j is %j", (text, name, expected) => {
  expect(withoutName(text, name)).toBe(expected);
});

test("a name put anywhere into a text is gone, and what stood around it is there", () => {
  const word = fc.stringMatching(/^[a-z]{2,8}$/);
  fc.assert(
    fc.property(fc.array(word), fc.array(word), (before, after) => {
      const text = [...before, "Qx Vjw", ...after].join(" ");
      expect(withoutName(text, "qx vjw")).toBe([...before, "[…]", ...after].join(" "));
    }),
  );
});
