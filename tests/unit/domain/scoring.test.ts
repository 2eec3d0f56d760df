import fc from "fast-check";
import { expect, test } from "vitest";
import { agility } from "../../../electron/domain/tests/agility/protocol.ts";
import { core } from "../../../electron/domain/tests/core/protocol.ts";
import { endurance } from "../../../electron/domain/tests/endurance/protocol.ts";
import type { Mark } from "../../../electron/domain/tests/protocol.ts";
import { parseAttempt, protocolOf, testCodes } from "../../../electron/domain/tests/registry.ts";
import { agilityAttempts } from "../tests/agility/examples.ts";
import { examplesOf } from "../tests/every-test.ts";

function pointsOf(mark: Mark): number {
  return mark.state === "complete" ? mark.value : Number.NaN;
}

test.each(testCodes)("%s: the order of the attempts never matters", (code) => {
  const { score, defaults } = protocolOf(code);
  const inTwoOrders = fc
    .array(examplesOf[code].attempts, { minLength: 1, maxLength: 6 })
    .chain((attempts) =>
      fc.tuple(
        fc.constant(attempts),
        fc.shuffledSubarray(attempts, { minLength: attempts.length, maxLength: attempts.length }),
      ),
    );
  fc.assert(
    fc.property(inTwoOrders, ([attempts, shuffled]) => {
      expect(score(defaults, shuffled)).toEqual(score(defaults, attempts));
    }),
  );
});

test.each(testCodes)("%s: what the door lets in is scored in whole grains", (code) => {
  const { score, defaults, slot, slotSize } = protocolOf(code);
  fc.assert(
    fc.property(examplesOf[code].attempts, (attempt) => {
      expect(parseAttempt(code, attempt).data).toEqual(attempt);
      const mark = score(defaults, [attempt]);
      if (mark.state === "complete") expect(Number.isSafeInteger(mark.value)).toBe(true);
      expect(typeof slot(attempt)).toBe("string");
      expect(slotSize(defaults)).toBeGreaterThan(0);
    }),
  );
});

test("agility: another touch never raises a mark, whatever a touch costs, and marks stay whole", () => {
  const penalties = fc.integer({ min: 0, max: 8 }).map((halves) => halves / 2);
  fc.assert(
    fc.property(agilityAttempts, agilityAttempts, penalties, (one, other, touchPenalty) => {
      const parameters = agility.parameters.parse({ ...agility.defaults, touchPenalty });
      const second = { ...other, direction: one.direction === "cw" ? ("ccw" as const) : ("cw" as const) };
      const before = pointsOf(agility.score(parameters, [one, second]));
      const after = pointsOf(agility.score(parameters, [{ ...one, touches: one.touches + 1 }, second]));
      expect(after).toBeLessThanOrEqual(before);
      expect(Number.isInteger(before)).toBe(true);
      expect(after).toBeGreaterThanOrEqual(0);
    }),
  );
});

test("agility: of two trials in one direction the better counts", () => {
  const trial = (direction: "cw" | "ccw", laps: number) => ({ direction, laps, extra: 0, touches: 0 });
  expect(pointsOf(agility.score(agility.defaults, [trial("cw", 5), trial("cw", 6), trial("ccw", 5)]))).toBe(
    88,
  );
  expect(agility.parameters.safeParse({ ...agility.defaults, touchPenalty: 0.25 }).success).toBe(false);
});

test("core: a longer hold never lowers a mark, and a mark is never longer than the hold", () => {
  fc.assert(
    fc.property(fc.nat(4_000_000), fc.nat(10_000), (held, more) => {
      const mark = pointsOf(core.score(core.defaults, [{ held }]));
      expect(pointsOf(core.score(core.defaults, [{ held: held + more }]))).toBeGreaterThanOrEqual(mark);
      expect(held - mark * 1000).toBeGreaterThanOrEqual(0);
      expect(held - mark * 1000).toBeLessThan(1000);
    }),
  );
});

test("endurance: a mark is a whole tenth, never shorter than the time and less than a tenth longer", () => {
  fc.assert(
    fc.property(fc.nat(4_000_000), (time) => {
      const mark = pointsOf(endurance.score(endurance.defaults, [{ finished: true, time }]));
      expect(mark % 100).toBe(0);
      expect(mark - time).toBeGreaterThanOrEqual(0);
      expect(mark - time).toBeLessThan(100);
    }),
  );
});

test("endurance: a finish stands before every stop, rounds before reps", () => {
  const stop = (roundsDone: number, repsDone: number) => ({ finished: false as const, roundsDone, repsDone });
  const score = (...attempts: Parameters<typeof endurance.score>[1]) =>
    endurance.score(endurance.defaults, attempts);
  expect(score(stop(2, 80), { finished: true, time: 400_001 })).toEqual({
    state: "complete",
    value: 400_100,
  });
  expect(score(stop(1, 80), stop(2, 3), stop(2, 1))).toEqual({ state: "unfinished", rounds: 2, reps: 3 });
});

test("should two attempts ever stand in one slot, the better one counts", () => {
  expect(pointsOf(core.score(core.defaults, [{ held: 60_000 }, { held: 90_000 }, { held: 70_000 }]))).toBe(
    90,
  );
  const times = [400_000, 380_000, 390_000].map((time) => ({ finished: true as const, time }));
  expect(pointsOf(endurance.score(endurance.defaults, times))).toBe(380_000);
});

test("endurance: rounds and reps of a stop must leave something undone", () => {
  const judge = (roundsDone: number, repsDone: number) =>
    endurance.plausibility(endurance.defaults, { finished: false, roundsDone, repsDone });
  expect(judge(2, 89)).toEqual({ level: "fine" });
  expect(judge(3, 0)).toMatchObject({
    sentence: { key: "test.endurance.plausibility.allRounds", values: { count: 3 } },
  });
  expect(judge(2, 90)).toMatchObject({
    sentence: { key: "test.endurance.plausibility.wholeRound", values: { count: 90 } },
  });
});
