import { expect, test } from "vitest";
import { type PushUpAttempt, pushUp } from "../../electron/domain/tests/push-up/protocol.ts";

function markOf(attempt: PushUpAttempt) {
  return pushUp.score(pushUp.defaults, [pushUp.attempt.parse(attempt)]);
}

// Common practice, no source: the rule and its worked rows.
test.each([
  ["20 on, then three off", `${".".repeat(20)}xxx`, 20],
  ["10 on, one slip, 5 on, three off", `${".".repeat(10)}x.....xxx`, 16],
  ["10 on, one slip, 5 on, two off, stops", `${".".repeat(10)}x.....xx`, 16],
  ["three off at once", "xxx", 0],
  ["10 on, two off, 1 on, three off", `${".".repeat(10)}xx.xxx`, 13],
  ["stops after 12 on", ".".repeat(12), 12],
])("push-up cadences: %s", (_name, cadences, value) => {
  expect(markOf({ how: "cadences", cadences })).toEqual({ state: "complete", value });
});

// Common practice, no source: the same rows as a tally from paper (reps done in all, off at the end).
test.each([
  [23, 3, 20],
  [19, 3, 16],
  [18, 2, 16],
  [3, 3, 0],
  [16, 3, 13],
  [12, 0, 12],
])("push-up tally: %i done, %i off at the end → %i", (reps, offAtEnd, value) => {
  expect(markOf({ how: "tally", reps, offAtEnd })).toEqual({ state: "complete", value });
});

// Arithmetic: metronome 40, two beats a rep → 3.000 s a rep, 20 reps a minute, 100 reps in 300 s.
test("the default tempo gives a rep every three seconds", () => {
  const { bpm, beatsPerRep, missesToStop } = pushUp.defaults;
  expect({ secondsPerRep: (60 * beatsPerRep) / bpm, missesToStop }).toEqual({
    secondsPerRep: 3,
    missesToStop: 3,
  });
});

test("the two ways of doing it stand beside the attempt", () => {
  expect(pushUp.variants).toEqual(["full", "knee"]);
  expect(pushUp.attempt.safeParse({ how: "tally", reps: 3, offAtEnd: 0, variant: "knee" }).success).toBe(
    false,
  );
});
