import fc from "fast-check";
import { expect, test } from "vitest";
import {
  isDone,
  nextCall,
  type QueuePlace,
  queueFor,
  type Runner,
  readyMinute,
  waitFor,
} from "../../../electron/domain/queue/queue.ts";
import { lastDoneByAthlete, type TimedAttempt } from "../../../electron/domain/queue/times.ts";
import { type TestCode, testCodes } from "../../../electron/domain/tests/registry.ts";

const at = (minute: number) => new Date(Date.UTC(2026, 10, 14, 9, minute)).toISOString();

function runner(bib: number, checkedIn: number, more: Partial<Runner> = {}): Runner {
  const nothing = { done: new Set<TestCode>(), leftOut: new Set<TestCode>(), lastDone: new Map() };
  return { athleteId: 100 + bib, bib, checkedIn: at(checkedIn), ...nothing, ...more };
}

test("an athlete waits in one queue: that of the next test in the held order", () => {
  const runners = [
    runner(1, 0),
    runner(2, 1, { done: new Set(["push-up"]), lastDone: new Map([["push-up", at(10)]]) }),
    runner(3, 2, { leftOut: new Set(["push-up"]) }),
    runner(4, 3, { done: new Set(testCodes) }),
  ];
  const bibs = (code: TestCode) => queueFor(code, runners, new Map(), 5).map(({ bib }) => bib);
  // Bib 3 has waited since check-in, bib 2 only since the push-up.
  expect([bibs("push-up"), bibs("agility"), bibs("vertical")]).toEqual([[1], [3, 2], []]);
});

test("whoever waited longest is first, equal waits by bib, called ones on top", () => {
  const runners = [runner(1, 5), runner(2, 3), runner(3, 3), runner(4, 9), runner(5, 8)];
  const called = new Map([
    [104, at(20)],
    [105, at(19)],
  ]);
  const queue = queueFor("push-up", runners, called, 5);
  expect(queue.map(({ bib }) => bib)).toEqual([5, 4, 2, 3, 1]);
});

test("rest counts from the last attempt of another test; nobody rests from check-in", () => {
  expect(waitFor("push-up", runner(1, 3), 5)).toEqual({ waitingSince: at(3), readyAt: at(3) });
  const lastDone = new Map<TestCode, string>([
    ["push-up", at(10)],
    ["agility", at(14)],
  ]);
  // One direction of the quadrant jump was done at 9:14: that is no rest of its own.
  expect(waitFor("agility", { checkedIn: at(0), lastDone }, 5)).toEqual({
    waitingSince: at(10),
    readyAt: at(15),
  });
  expect(waitFor("vertical", { checkedIn: at(0), lastDone }, 5)).toEqual({
    waitingSince: at(14),
    readyAt: at(19),
  });
  // Withdrawn and back: waits since then, and the rest still counts from the test.
  expect(waitFor("vertical", { checkedIn: at(16), lastDone }, 5)).toEqual({
    waitingSince: at(16),
    readyAt: at(19),
  });
});

test("the next to call is the first rested one who is not called", () => {
  const place = (bib: number, readyAt: number, calledAt: number | null = null): QueuePlace => ({
    athleteId: bib,
    bib,
    waitingSince: at(0),
    readyAt: at(readyAt),
    calledAt: calledAt === null ? null : at(calledAt),
  });
  const queue = [place(9, 0, 1), place(1, 8), place(2, 4), place(3, 3)];
  expect(nextCall(queue, at(5))).toEqual({ who: place(2, 4) });
  expect(nextCall(queue, at(2))).toEqual({ resting: place(3, 3) });
  expect(nextCall([place(9, 0, 1)], at(5))).toEqual({ nobody: true });
  expect(nextCall([], at(5))).toEqual({ nobody: true });
});

test("the queues of all tests together hold everybody who has a test to take, once", () => {
  const some = fc.uniqueArray(fc.constantFrom(...testCodes));
  const field = fc.array(fc.record({ done: some, leftOut: some, checkedIn: fc.nat(59) }), { maxLength: 30 });
  fc.assert(
    fc.property(field, (people) => {
      const runners = people.map(({ done, leftOut, checkedIn }, index) =>
        runner(index + 1, checkedIn, { done: new Set(done), leftOut: new Set(leftOut) }),
      );
      const waiting = testCodes.flatMap((code) => queueFor(code, runners, new Map(), 5));
      const toTest = runners.filter(({ done, leftOut }) =>
        testCodes.some((code) => !done.has(code) && !leftOut.has(code)),
      );
      expect(waiting.map(({ bib }) => bib).sort()).toEqual(toTest.map(({ bib }) => bib).sort());
    }),
  );
});

test("a correction keeps the time of what it corrects, through a chain and to another athlete", () => {
  const one = (id: string, minute: number, replaces: string | null, stands: boolean, athleteId = 1) =>
    ({ id, athleteId, test: "push-up", at: at(minute), replaces, stands }) satisfies TimedAttempt;
  const attempts = [one("a", 1, null, false), one("b", 30, "a", false), one("c", 50, "b", true, 2)];
  expect(lastDoneByAthlete(attempts)).toEqual(new Map([[2, new Map([["push-up", at(1)]])]]));
});

test("an attempt that does not stand leaves no time behind; of several the last counts", () => {
  const one = (id: string, minute: number, stands: boolean): TimedAttempt => ({
    ...{ id, athleteId: 1, test: "vertical", at: at(minute), replaces: null, stands },
  });
  const attempts = [one("a", 1, true), one("b", 3, true), one("c", 9, false)];
  expect(lastDoneByAthlete(attempts).get(1)?.get("vertical")).toBe(at(3));
});

test("a mark with a direction missing is not done; one that was stopped is", () => {
  expect(isDone({ state: "incomplete", missing: ["cw"] })).toBe(false);
  expect(isDone({ state: "unfinished", rounds: 1, reps: 2 })).toBe(true);
  expect(isDone({ state: "complete", value: 0 })).toBe(true);
});

test("a rest's end is told as the first whole minute at which it is over", () => {
  expect(readyMinute("2026-11-14T18:08:16.000Z")).toBe("2026-11-14T18:09:00.000Z");
  expect(readyMinute("2026-11-14T18:08:00.000Z")).toBe("2026-11-14T18:08:00.000Z");
  fc.assert(
    fc.property(fc.date({ noInvalidDate: true }), (ready) => {
      const told = Date.parse(readyMinute(ready.toISOString()));
      expect(told - ready.getTime()).toBeGreaterThanOrEqual(0);
      expect(told - ready.getTime()).toBeLessThan(60_000);
      expect(told % 60_000 === 0).toBe(true);
    }),
  );
});
