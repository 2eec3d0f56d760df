import fc from "fast-check";
import { expect, test } from "vitest";
import { nothingAhead, typeAhead } from "../../../renderer/screens/station/entry/ahead.ts";

const typed = (...keys: readonly string[]) => keys.reduce(typeAhead, nothingAhead);

test("digits and Enter are the next bib; what comes after it is not kept, and that is said", () => {
  expect(typed("7")).toEqual({ bib: "7", ended: false, more: false });
  expect(typed("7", "Enter")).toEqual({ bib: "7", ended: true, more: false });
  expect(typed("7", "Enter", "9", "0", "Enter")).toEqual({ bib: "7", ended: true, more: true });
});

test("Enter alone is nothing, and Backspace takes back", () => {
  expect(typed("Enter")).toEqual(nothingAhead);
  expect(typed("1", "2", "Backspace")).toEqual({ bib: "1", ended: false, more: false });
  expect(typed("1", "Enter", "4", "Backspace")).toEqual({ bib: "1", ended: false, more: false });
});

test("no keys ever make a bib of other digits than those typed before the first Enter", () => {
  const keys = fc.array(fc.constantFrom(..."0123456789", "Enter"), { maxLength: 12 });
  fc.assert(
    fc.property(keys, (pressed) => {
      const digits = pressed
        .join(" ")
        .split("Enter")
        .map((part) => part.replaceAll(" ", ""));
      const first = digits.find((part) => part !== "") ?? "";
      expect(typed(...pressed).bib).toBe(first.slice(0, 6));
    }),
  );
});
