import fc from "fast-check";
import { expect, test } from "vitest";
import { grainsOf, type Length, lengthOfMillimetres } from "../../../electron/domain/length.ts";
import { protocolOf, testCodes } from "../../../electron/domain/tests/registry.ts";
import {
  formatLength,
  formatTime,
  fromUnit,
  inUnit,
  parseCount,
  parseLength,
  parseTime,
} from "../../../electron/domain/units.ts";
import { showNumber } from "../../../renderer/words/numbers.ts";
import { textOf } from "./text.ts";

const anyText = fc.oneof(
  fc.string(),
  fc.string({ unit: "binary" }),
  fc.string({ unit: fc.constantFrom(..."0123456789.:,'\" /-+eEsincm½′″ ") }),
);

const grain = protocolOf("agility").grain;
const readers: Record<string, (text: string) => object> = {
  centimetres: (text) => parseLength(text, "cm"),
  inches: (text) => parseLength(text, "in"),
  time: parseTime,
  count: parseCount,
  unit: (text) => fromUnit(grain, text),
};

test.each(Object.keys(readers))(
  "reading a %s never throws: a whole number, or a sentence with words",
  (name) => {
    fc.assert(
      fc.property(anyText, (text) => {
        const read = readers[name]?.(text);
        if (read === undefined) throw new Error("no reader");
        if ("sentence" in read) {
          expect(textOf(read.sentence as { key: string })).not.toContain("{{");
        } else {
          const numbers = "length" in read ? [grainsOf(read.length as Length)] : Object.values(read);
          expect(numbers.every((value) => Number.isSafeInteger(value) && value >= 0)).toBe(true);
        }
      }),
      { numRuns: 1000 },
    );
  },
);

test("every half centimetre and every quarter inch comes back as it was read", () => {
  for (let half = 0; half <= 1000; half += 1) {
    const read = parseLength(String(half / 2), "cm");
    expect(read).toEqual({ length: { unit: "cm", halves: half } });
    expect(parseLength(formatLength(half * 100, "cm"), "cm")).toEqual(read);
  }
  for (let quarter = 0; quarter <= 787; quarter += 1) {
    const read = parseLength(String(quarter / 4), "in");
    expect(read).toEqual({ length: { unit: "in", quarters: quarter } });
    expect(formatLength(quarter * 127, "in")).toBe(String(quarter / 4));
  }
});

test("millimetres of before are half centimetres, or the quarter inch that was rounded to them, or stay", () => {
  for (let quarter = 0; quarter <= 787; quarter += 1) {
    const mm = Math.floor((635 * quarter + 50) / 100);
    const read = lengthOfMillimetres(mm);
    if (mm % 5 === 0) expect(read).toEqual({ unit: "cm", halves: mm / 5 });
    else expect(read).toEqual({ unit: "in", quarters: quarter });
    expect(Math.abs(grainsOf(read) - quarter * 127)).toBeLessThanOrEqual(10);
  }
  expect(lengthOfMillimetres(2441)).toEqual({ unit: "mm", whole: 2441 });
  expect(grainsOf(lengthOfMillimetres(2441))).toBe(2441 * 20);
});

test("feet and inches are the same length as inches alone", () => {
  fc.assert(
    fc.property(fc.nat(12), fc.nat(11), fc.constantFrom("", " 1/4", " 1/2", " 3/4"), (feet, inches, part) => {
      const alone = parseLength(`${12 * feet + inches}${part}`, "in");
      expect(parseLength(`${feet}' ${inches}${part}"`, "in")).toEqual(alone);
      expect("length" in alone).toBe(true);
    }),
  );
});

test("a time comes back as it was written, in tenths", () => {
  fc.assert(
    fc.property(fc.nat(863_999), (tenths) => {
      expect(parseTime(formatTime(tenths * 100, true))).toEqual({ ms: tenths * 100 });
    }),
  );
});

test("plain seconds with three decimals are exact to the millisecond", () => {
  fc.assert(
    fc.property(fc.nat(9_999_999), (ms) => {
      const text = `${Math.floor(ms / 1000)}.${String(ms % 1000).padStart(3, "0")}`;
      expect(parseTime(text)).toEqual({ ms });
    }),
  );
});

test.each(testCodes)("%s: a mark comes back from its unit", (code) => {
  fc.assert(
    fc.property(fc.nat(5_000_000), (value) => {
      const { grain: own } = protocolOf(code);
      expect(fromUnit(own, String(inUnit(own, value)))).toEqual({ value });
    }),
  );
});

test("a mark between two grains is refused with the step to write it in", () => {
  const read = fromUnit(grain, "29.6");
  expect("sentence" in read && textOf(read.sentence)).toBe("Write this result in steps of 0.25.");
  expect(fromUnit(protocolOf("endurance").grain, "10.11")).toEqual({ value: 10_110 });
  expect(fromUnit(protocolOf("core").grain, "59.5")).toMatchObject({ sentence: { values: { step: 1 } } });
});

test.each(["en", "es"])("what is shown in %s is read back as it is: lengths, times and marks", (language) => {
  const shown = (text: string) => showNumber(text, language);
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 1000 }), fc.integer({ min: 0, max: 600_000 }), (grains, tenths) => {
      expect(parseLength(shown(formatLength(grains * 100, "cm")), "cm")).toEqual({
        length: { unit: "cm", halves: grains },
      });
      expect(parseTime(shown(formatTime(tenths * 100, true)))).toEqual({ ms: tenths * 100 });
      expect(fromUnit(grain, shown(`${inUnit(grain, grains)}`))).toEqual({ value: grains });
    }),
  );
});
