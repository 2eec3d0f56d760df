import fc from "fast-check";
import { expect, test } from "vitest";
import { fingerprint } from "../../../electron/domain/tests/fingerprint.ts";
import { defaultParameters, protocolOf, testCodes } from "../../../electron/domain/tests/registry.ts";

test("reads as a line of text", () => {
  expect(fingerprint("push-up", "full", defaultParameters("push-up"))).toBe(
    "push-up/full beatsPerRep=2 bpm=40 missesToStop=3",
  );
  expect(fingerprint("agility", "", defaultParameters("agility"))).toBe(
    "agility crossSize=914 seconds=10 touchPenalty=0.5",
  );
  expect(
    fingerprint("endurance", "", { rounds: 1, exercises: [{ sides: 1, exercise: "high-knees", count: 4 }] }),
  ).toBe('endurance exercises=[{"count":4,"exercise":"high-knees","sides":1}] rounds=1');
});

test("every test and variant has its own", () => {
  const all = testCodes.flatMap((code) => {
    const { variants, defaults } = protocolOf(code);
    return variants.map((variant) => fingerprint(code, variant, defaults));
  });
  expect(new Set(all).size).toBe(6);
});

const parameters = fc.record({
  rounds: fc.integer({ min: 1, max: 2 }),
  exercises: fc.array(
    fc.record({ exercise: fc.constantFrom("high-knees", "lunge-jumps"), count: fc.constantFrom(2, 4) }),
    { maxLength: 2 },
  ),
});

/** The same value with the keys of every object put in the other way round. */
function turned(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(turned);
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .reverse()
      .map(([key, part]) => [key, turned(part)]),
  );
}

test("equal exactly when the parameters are equal, whatever the order of their keys", () => {
  const equal = (one: unknown, other: unknown) => {
    try {
      expect(other).toEqual(one);
      return true;
    } catch {
      return false;
    }
  };
  fc.assert(
    fc.property(parameters, parameters, (one, other) => {
      expect(fingerprint("endurance", "", turned(one))).toBe(fingerprint("endurance", "", one));
      const same = fingerprint("endurance", "", one) === fingerprint("endurance", "", other);
      expect(same).toBe(equal(one, other));
    }),
  );
});

test("the order of the exercises is part of the test", () => {
  const [first, second] = ["high-knees", "lunge-jumps"].map((exercise) => ({ exercise, count: 4 }));
  expect(fingerprint("endurance", "", { exercises: [first, second] })).not.toBe(
    fingerprint("endurance", "", { exercises: [second, first] }),
  );
});
