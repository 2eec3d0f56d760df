import fc from "fast-check";
import { expect, test } from "vitest";
import { cuesBetween } from "../../../electron/domain/heats/cues.ts";
import { defaultParameters, type TestCode, testCodes } from "../../../electron/domain/tests/registry.ts";
import { textOf } from "../domain/text.ts";

const cues = <Test extends TestCode>(test: Test, from: number, until: number) =>
  cuesBetween(test, defaultParameters(test), from, until);
const told = (test: TestCode, from: number, until: number) =>
  cues(test, from, until).map(({ atMs, cue, count, say }) =>
    [atMs, cue, ...(count === undefined ? [] : [count]), ...(say === undefined ? [] : [textOf(say)])].join(
      " ",
    ),
  );

// Arithmetic: 40 beats a minute are 1500 ms apart; a rep takes two.
test("push-up: four beats before, then bottom and top in turn", () => {
  expect(told("push-up", -7000, 9001)).toEqual([
    "-6000 count-in 4",
    "-4500 count-in 3",
    "-3000 count-in 2",
    "-1500 count-in 1",
    "0 start",
    "1500 bottom",
    "3000 top 1",
    "4500 bottom",
    "6000 top 2",
    "7500 bottom",
    "9000 top 3",
  ]);
});

test("push-up: the beat of minute sixty is where the grid has it, at any tempo", () => {
  for (const bpm of [20, 37, 40, 53, 120]) {
    const parameters = { ...defaultParameters("push-up"), bpm };
    const found = cuesBetween("push-up", parameters, 3_599_000, 3_601_000);
    expect(found.length).toBeGreaterThan(0);
    for (const { atMs } of found) {
      const beats = Math.round((atMs * bpm) / 60_000);
      expect(atMs).toBe(beats * (60_000 / bpm));
    }
  }
});

test("quadrant jump: count-in, start, whistle", () => {
  expect(told("agility", -5000, 20_000)).toEqual([
    "-3000 count-in 3",
    "-2000 count-in 2",
    "-1000 count-in 1",
    "0 start",
    "10000 end",
  ]);
});

test("plank: every change is announced three seconds ahead, into round two and on", () => {
  expect(told("core", -3000, 121_000)).toEqual([
    "-3000 count-in 3",
    "-2000 count-in 2",
    "-1000 count-in 1",
    "0 start Both forearms and both feet down.",
    "57000 warning Next: lift one foot.",
    "60000 change Lift one foot.",
    "87000 warning Next: change feet.",
    "90000 change That foot down, the other foot up.",
    "117000 warning Next: feet down, lift one arm.",
    "120000 change Both feet down, one arm up.",
  ]);
  expect(told("core", 207_000, 300_001)).toEqual([
    "207000 warning Next: change to the other arm and leg.",
    "210000 change Both down, the other arm and leg up.",
    "237000 warning Next: everything down.",
    "240000 change Both forearms and both feet down.",
    "297000 warning Next: lift one foot.",
    "300000 change Lift one foot.",
  ]);
  expect(told("core", 537_000, 540_001)).toEqual([
    "537000 warning Next: lift one foot.",
    "540000 change Lift one foot.",
  ]);
});

test("plank: no announcement says what its change says, so that nobody moves three seconds early", () => {
  const stages = cues("core", 0, 480_000).filter(({ say }) => say !== undefined);
  const warnings = stages.filter(({ cue }) => cue === "warning").map(({ say }) => say?.key);
  expect(warnings).toHaveLength(14);
  for (const key of warnings) expect(key).toMatch(/^stages\.soon\./);
  for (const { say } of stages.filter(({ cue }) => cue === "change"))
    expect(say?.key).toMatch(/^stages\.call\./);
});

test("circuit: count-in and start; the leap has no clock", () => {
  expect(told("endurance", -9000, 900_000)).toEqual([
    "-3000 count-in 3",
    "-2000 count-in 2",
    "-1000 count-in 1",
    "0 start",
  ]);
  expect(told("vertical", -9000, 900_000)).toEqual([]);
});

test.each(testCodes)("%s: asked for piece by piece, every cue comes once and in order", (code) => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 1, max: 30_000 }), { maxLength: 30 }), (steps) => {
      const edges = [-8000];
      for (const step of steps) edges.push((edges.at(-1) ?? 0) + step);
      const pieces = edges.slice(1).flatMap((edge, index) => cues(code, edges[index] ?? 0, edge));
      const times = pieces.map(({ atMs }) => atMs);
      expect(pieces).toEqual(cues(code, -8000, edges.at(-1) ?? -8000));
      expect(times).toEqual(times.toSorted((a, b) => a - b));
    }),
  );
});
