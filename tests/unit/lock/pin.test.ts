import fc from "fast-check";
import { expect, test } from "vitest";
import { pinTrouble } from "../../../electron/domain/lock/pin.ts";

test.each([
  ["12345", "lock.pin.short"],
  ["", "lock.pin.short"],
  ["12345a", "lock.pin.digits"],
  ["１２３４５６７", "lock.pin.digits"],
  ["1234567890123", "lock.pin.long"],
  ["123456", "lock.pin.easy"],
  ["987654321", "lock.pin.easy"],
  ["789012", "lock.pin.easy"],
  ["000000", "lock.pin.easy"],
  ["121212", "lock.pin.easy"],
  ["135791", "lock.pin.easy"],
])("%s is no PIN: %s", (pin, key) => {
  expect(pinTrouble(pin)?.key).toBe(key);
});

test.each(["271828", "142857", "100200300401"])("%s is one", (pin) => {
  expect(pinTrouble(pin)).toBeNull();
});

// Patterns that lists of common PINs begin with. From memory, no source.
test.each([
  ...["123123", "456456", "1231231", "12341234", "123412341234"],
  ...["112233", "334455", "998877", "102030", "010203", "121314", "100200300", "246802"],
  ...["123789", "321654", "123456654321", "456123", "123321", "1234321", "590095"],
  ...["19900101", "01011990", "12311999", "31121999", "20260319", "199003", "032026"],
])("%s is what others would try first", (pin) => {
  expect(pinTrouble(pin)).toEqual({ key: "lock.pin.easy" });
});

test.each(["190319", "123579", "271890", "120397", "19901301", "32011990", "1990010", "100200300401"])(
  "%s may be one",
  (pin) => {
    expect(pinTrouble(pin)).toBeNull();
  },
);

test("of all PINs of six digits far fewer than one in twenty is refused", () => {
  // Every seventeenth, which no pattern is a multiple of: of all the million it is 1.91 %, counted once.
  const some = Array.from({ length: 58_823 }, (_none, index) => String(17 * index).padStart(6, "0"));
  const share = some.filter((pin) => pinTrouble(pin) !== null).length / some.length;
  expect(share).toBeGreaterThan(0.01);
  expect(share).toBeLessThan(0.02);
});

test("property: so it is with longer ones, and whatever is a group over and over is refused", () => {
  const digits = (length: number) =>
    fc
      .array(fc.integer({ min: 0, max: 9 }), { minLength: length, maxLength: length })
      .map((all) => all.join(""));
  for (const length of [7, 8, 9, 10, 11, 12]) {
    const some = fc.sample(digits(length), { numRuns: 4000, seed: length });
    expect
      .soft(some.filter((pin) => pinTrouble(pin) !== null).length / some.length, String(length))
      .toBeLessThan(0.02);
  }
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 6 }),
      fc.integer({ min: 2, max: 6 }),
      digits(6),
      (size, times, from) => {
        const pin = from.slice(0, size).repeat(times);
        fc.pre(pin.length >= 6 && pin.length <= 12);
        expect(pinTrouble(pin)).not.toBeNull();
        expect(pinTrouble([...pin].reverse().join(""))).not.toBeNull();
      },
    ),
  );
});
