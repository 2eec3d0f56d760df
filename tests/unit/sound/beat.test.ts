import fc from "fast-check";
import { expect, test } from "vitest";
import { createAnnouncer } from "../../../renderer/sound/announce.ts";
import { beatAt } from "../../../renderer/sound/beat.ts";
import { createRig } from "./rig.ts";

test.each([
  [Number.NEGATIVE_INFINITY, { way: "rest", place: 0, sinceBeat: 0, count: 0 }],
  [-6_001, { way: "rest", place: 0, sinceBeat: 0, count: 0 }],
  [-6_000, { way: "count-in", place: 0, sinceBeat: 0, count: 4 }],
  [-1, { way: "count-in", place: 0, sinceBeat: 1_499, count: 1 }],
  [0, { way: "down", place: 0, sinceBeat: 0, count: 0 }],
  [750, { way: "down", place: 0.5, sinceBeat: 750, count: 0 }],
  [1_500, { way: "up", place: 1, sinceBeat: 0, count: 0 }],
  [2_250, { way: "up", place: 0.5, sinceBeat: 750, count: 0 }],
  [3_000, { way: "down", place: 0, sinceBeat: 0, count: 0 }],
] as const)("at %d ms of a push-up at 40 beats a minute", (elapsed, moment) => {
  expect(beatAt(elapsed, 1_500, 2, 4)).toEqual(moment);
});

test("the bar is at the top on every judging beat and at the bottom on every other one, at any tempo", () => {
  fc.assert(
    fc.property(fc.integer({ min: 20, max: 80 }), fc.integer({ min: 0, max: 2_000 }), (bpm, ordinal) => {
      const beatMs = 60_000 / bpm;
      const { place } = beatAt(ordinal * beatMs, beatMs, 2, 4);
      expect(place).toBeCloseTo(ordinal % 2, 6);
    }),
  );
});

test("what a cue says is said once, when it is due; what has long gone by is not", () => {
  const rig = createRig();
  const cues = [1_000, 2_000, 2_300].map(
    (atMs) => ({ atMs, cue: "change", say: { key: `${atMs}` } }) as const,
  );
  const said: string[] = [];
  const announcer = createAnnouncer(rig.clock, ({ key }) => said.push(key));
  const timeline = (from: number, until: number) => cues.filter(({ atMs }) => from <= atMs && atMs < until);
  for (const now of [10_900, 11_001, 11_001, 11_200, 13_700, 13_800]) {
    rig.now = now;
    announcer.tick(timeline);
  }
  expect(said).toEqual(["1000", "2300"]);
});
