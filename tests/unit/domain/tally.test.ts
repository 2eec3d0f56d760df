import fc from "fast-check";
import { expect, test } from "vitest";
import type { Runner } from "../../../electron/domain/queue/queue.ts";
import { endAtPace, isFinished, tally, testsLeft } from "../../../electron/domain/queue/tally.ts";
import { type TestCode, testCodes } from "../../../electron/domain/tests/registry.ts";

function runner(
  athleteId: number,
  done: readonly TestCode[],
  leftOut: readonly TestCode[],
  doneAt = "",
): Runner {
  const lastDone = new Map(done.map((code) => [code, doneAt] as const));
  const checkedIn = "2026-11-14T09:00:00.000Z";
  return { athleteId, bib: athleteId, checkedIn, done: new Set(done), leftOut: new Set(leftOut), lastDone };
}

test("one test's tally, worked by hand", () => {
  const runners = [
    runner(1, ["push-up", "agility"], []),
    runner(2, ["push-up"], []),
    runner(3, [], []),
    runner(4, [], ["push-up", "agility"]),
    runner(5, ["push-up"], ["agility"]),
  ];
  expect(tally("agility", runners, new Set([2, 1]))).toEqual({
    test: "agility",
    done: 1,
    waiting: 1,
    later: 1,
    leftOut: 2,
    incomplete: 1,
  });
  expect(tally("vertical", runners, new Set())).toMatchObject({ done: 0, waiting: 3, later: 2, leftOut: 0 });
  expect(testsLeft(runners)).toBe(3 + 4 + 5 + 3 + 3);
});

const some = fc.subarray([...testCodes]);

test("everybody is in exactly one place of each test, and waits for at most one", () => {
  fc.assert(
    fc.property(fc.array(fc.tuple(some, some), { maxLength: 8 }), (people) => {
      const runners = people.map(([done, leftOut], index) => runner(index, done, leftOut));
      const tallies = testCodes.map((code) => tally(code, runners, new Set()));
      for (const { done, waiting, later, leftOut } of tallies) {
        expect(done + waiting + later + leftOut).toBe(runners.length);
      }
      const waiting = tallies.reduce((sum, each) => sum + each.waiting, 0);
      expect(waiting).toBe(runners.filter((each) => !isFinished(each)).length);
    }),
  );
});

test("ten tests in half an hour and twenty to go: an hour more", () => {
  const at = "2026-11-14T10:15:00.000Z";
  const runners = [
    ...[1, 2, 3, 4, 5].map((id) => runner(id, ["push-up", "agility"], ["vertical", "core", "endurance"], at)),
    ...[6, 7, 8, 9].map((id) => runner(id, [], [])),
    // Long ago: sets the beginning, counts for no pace.
    runner(10, ["push-up"], ["agility", "vertical", "core", "endurance"], "2026-11-14T09:00:00.000Z"),
  ];
  expect(endAtPace(runners, "2026-11-14T10:30:00.000Z")).toBe("2026-11-14T11:30:00.000Z");
  // Two who are still to come bring ten tests more.
  const left = testsLeft(runners);
  const later = Date.parse("2026-11-14T10:30:00.000Z") + (3_600_000 * (left + 10)) / left;
  expect(endAtPace(runners, "2026-11-14T10:30:00.000Z", 2)).toBe(new Date(later).toISOString());
});

test("no end is told when nothing is left or next to nothing was done", () => {
  const at = "2026-11-14T10:15:00.000Z";
  const now = "2026-11-14T10:30:00.000Z";
  expect(endAtPace([], now)).toBeNull();
  expect(endAtPace([runner(1, [...testCodes], [], at)], now)).toBeNull();
  expect(endAtPace([runner(1, ["push-up"], [], at), runner(2, [], [])], now)).toBeNull();
  const many = [1, 2, 3, 4, 5, 6].map((id) => runner(id, ["push-up"], [], at));
  expect(endAtPace(many, "2026-11-14T10:24:00.000Z")).toBeNull();
  // Six tests in a quarter of an hour, twenty-four to go.
  expect(endAtPace(many, now)).toBe("2026-11-14T11:30:00.000Z");
});
