import { expect, test } from "vitest";
import { endurance } from "../../electron/domain/tests/endurance/protocol.ts";
import { parseTime } from "../../electron/domain/units.ts";

// World Athletics Technical Rules, timing by hand: up to the next 0.1 s unless exact (10.11 → 10.2 is its example;
// rule from memory, the other rows by decimal arithmetic).
test.each([
  ["10.10 s", "0:10.1"],
  ["10.11 s", "0:10.2"],
  ["10.19 s", "0:10.2"],
  ["10.20 s", "0:10.2"],
  ["10.01 s", "0:10.1"],
  ["59.91 s", "1:00.0"],
  ["59.99 s", "1:00.0"],
])("a hand time of %s is %s", (text, written) => {
  const read = parseTime(text);
  if (!("ms" in read)) throw new Error(`${text} was not read`);
  const mark = endurance.score(endurance.defaults, [{ finished: true, time: read.ms }]);
  if (mark.state !== "complete") throw new Error("a finish makes a complete mark");
  expect(endurance.write(mark.value, "cm").number).toBe(written);
});

// Common practice for the strides, the other counts ours: no source.
test("the default circuit", () => {
  const { rounds, exercises } = endurance.defaults;
  expect(endurance.better).toBe("lower");
  expect(rounds).toBe(3);
  expect(exercises.map(({ exercise, count }) => [exercise, count])).toEqual([
    ["skater-strides", 20],
    ["lunge-jumps", 20],
    ["high-knees", 40],
    ["squat-thrusts", 10],
  ]);
});

// Common practice, no source: counts are totals, so an odd count of a two-sided exercise makes no sense. Strides, lunges and
// knees have two sides by what they are, and a squat thrust has one, whatever is typed.
test.each([
  ["skater-strides", 2],
  ["lunge-jumps", 2],
  ["high-knees", 2],
  ["squat-thrusts", 1],
] as const)("%s has %i side(s) whatever is typed, and takes counts that fit", (exercise, sides) => {
  const circuit = (count: number, typed: 1 | 2) =>
    endurance.parameters.safeParse({ rounds: 1, exercises: [{ exercise, count, sides: typed }] });
  expect([circuit(20, 1).data?.exercises[0]?.sides, circuit(20, 2).data?.exercises[0]?.sides]).toEqual([
    sides,
    sides,
  ]);
  expect([circuit(21, 1).success, circuit(21, 2).success]).toEqual(Array(2).fill(sides === 1));
});

// Common practice, no source: not finished keeps rounds and reps.
test("not finished keeps rounds and reps", () => {
  const attempt = { finished: false, roundsDone: 2, repsDone: 35 } as const;
  expect(endurance.score(endurance.defaults, [attempt])).toEqual({
    state: "unfinished",
    rounds: 2,
    reps: 35,
  });
});
