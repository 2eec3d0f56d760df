import { expect, test } from "vitest";
import { stopsTold } from "../../../electron/domain/marks/stopped.ts";
import { defaultParameters } from "../../../electron/domain/tests/registry.ts";
import { sentence } from "../../../electron/domain/words.ts";

const rules = defaultParameters("endurance");
const stopped = (rounds: number, reps: number) => ({ state: "unfinished" as const, rounds, reps });
const finished = { state: "complete" as const, value: 372_400 };

// A round is 20 + 20 + 40 + 10 = 90 reps, and three of them 270.
test("two stops are told by the reps done of all", () => {
  expect(stopsTold("endurance", rules, stopped(2, 15), stopped(1, 89))).toEqual(
    sentence("marks.stopped.again", { done: 195, of: 270, before: 179 }),
  );
});

test("a finish after a stop, and a stop after a finish", () => {
  expect(stopsTold("endurance", rules, finished, stopped(2, 15))).toEqual(
    sentence("marks.stopped.finishedNow", { before: 195, of: 270 }),
  );
  expect(stopsTold("endurance", rules, stopped(0, 0), finished)).toEqual(
    sentence("marks.stopped.finishedBefore", { done: 0, of: 270, time: "6:12.4" }),
  );
});

test("of two finishes it tells nothing, and of a test that nobody stops", () => {
  expect(stopsTold("endurance", rules, finished, finished)).toBeNull();
  expect(stopsTold("core", defaultParameters("core"), { state: "complete", value: 60 }, finished)).toBeNull();
});

test("the reps of a circuit by its own rules", () => {
  const short = {
    rounds: 2,
    exercises: [{ exercise: "squat-thrusts" as const, count: 15, sides: 1 as const }],
  };
  expect(stopsTold("endurance", short, stopped(1, 4), stopped(0, 14))).toEqual(
    sentence("marks.stopped.again", { done: 19, of: 30, before: 14 }),
  );
});
