import { expect, test } from "vitest";
import { meantBy, type Seen } from "../../../renderer/screens/station/live/meant.ts";

/** A column of keys, each 100 px wide and high, as they were a moment ago. */
const at = (row: number, isRunning: boolean): Seen => ({
  ...{ left: 0, right: 100, top: row * 100, bottom: row * 100 + 100 },
  isRunning,
});
const on = (row: number) => ({ clientX: 50, clientY: row * 100 + 50 });

const before = new Map([
  ["stop 1", at(0, true)],
  ["stop 2", at(1, true)],
  ["correct", at(2, false)],
]);
const whileRun = (...lanes: string[]) => lanes.map((lane) => `stop ${lane}`);
const meant = (row: number, target: string | null, running: readonly string[]) =>
  meantBy(on(row), target, before, (key) => running.includes(key));

test.each([
  ["what lies where it lay", 0, "stop 1", whileRun("1", "2"), "target"],
  ["a key that came under the finger", 4, "end", whileRun("1", "2"), "nothing"],
  ["a lane that moved away from under the finger, by another key", 1, "undo", whileRun("2"), "stop 2"],
  [
    "a lane that moved away from under the finger, by another lane",
    1,
    "stop 1",
    whileRun("1", "2"),
    "stop 2",
  ],
  ["a lane that moved away from under the finger, and left nothing", 1, null, whileRun("2"), "stop 2"],
  ["nothing, where nothing was", 4, null, whileRun("1", "2"), "target"],
  ["a lane that came where nothing was", 5, "stop 2", whileRun("2"), "target"],
  ["a lane that came where another key was", 2, "stop 2", whileRun("2"), "target"],
  [
    "a second press on a lane that is done, where the next one has come",
    0,
    "stop 2",
    whileRun("2"),
    "nothing",
  ],
  ["a second press on a lane that is done", 0, "correct", whileRun("2"), "nothing"],
] as const)("%s", (_what, row, target, running, expected) => {
  expect(meant(row, target, running)).toBe(expected);
});
