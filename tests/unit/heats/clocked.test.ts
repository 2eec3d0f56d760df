import { expect, test } from "vitest";
import { core } from "../../../electron/domain/tests/core/protocol.ts";
import { endurance } from "../../../electron/domain/tests/endurance/protocol.ts";
import { textOf } from "../domain/text.ts";
import { back, laneAfter, tap } from "./taps.ts";

// The rows of the rule (common practice, no source).
test.each([
  [59_999, 59, "both feet down"],
  [60_000, 60, "one foot up"],
  [209_900, 209, "arm and opposite leg"],
  [239_999, 239, "other arm and leg"],
  [240_000, 240, "round 2, both feet down"],
  [301_000, 301, "round 2, one foot up"],
])("a plank stopped at %i ms is %i s, %s", (atMs, seconds, stage) => {
  const lane = laneAfter("core", [tap("stop", atMs)]);
  expect(lane).toMatchObject({ phase: "done", heldMs: atMs, idle: [] });
  expect(textOf(lane.stage.sentence)).toBe(stage);
  const mark = core.score(
    core.defaults,
    lane.results.map(({ seen }) => seen),
  );
  expect(mark).toEqual({ state: "complete", value: seconds });
});

test("a plank runs on until it is stopped, once; a stop taken back lets it run on", () => {
  expect(laneAfter("core", [], null)).toMatchObject({ phase: "ready", heldMs: 0 });
  expect(laneAfter("core", [], -1500)).toMatchObject({ phase: "going", heldMs: 0 });
  expect(laneAfter("core", [], 61_000)).toMatchObject({ phase: "going", stage: { name: "one-foot" } });
  const stop = tap("stop", 70_000);
  const twice = [stop, tap("stop", 75_000)];
  expect(laneAfter("core", twice, 99_000)).toMatchObject({ heldMs: 70_000, idle: [twice[1]?.id] });
  expect(laneAfter("core", [stop, back(stop)], 80_000)).toMatchObject({ phase: "going", heldMs: 80_000 });
  expect(laneAfter("core", [tap("stop", -1)], 10).results).toEqual([]);
});

test("a circuit's rounds are its splits, and the last one is the finish", () => {
  const rounds = [95_310, 201_040, 312_410].map((ms) => tap("round", ms));
  const seen = [0, 1, 2, 3].map((count) => {
    const { phase, round, splits, finished } = laneAfter("endurance", rounds.slice(0, count), 312_410);
    return { phase, round, splits: splits.length, finished };
  });
  expect(seen).toEqual([
    { phase: "going", round: 1, splits: 0, finished: false },
    { phase: "going", round: 2, splits: 1, finished: false },
    { phase: "going", round: 3, splits: 2, finished: false },
    { phase: "done", round: 3, splits: 3, finished: true },
  ]);
  const { results } = laneAfter("endurance", rounds);
  expect(results).toEqual([{ key: "mark", seen: { finished: true, time: 312_410 } }]);
  // World Athletics, hand timing: up to the next tenth.
  const mark = endurance.score(
    endurance.defaults,
    results.map((each) => each.seen),
  );
  expect(mark).toEqual({ state: "complete", value: 312_500 });
});

test("a finger that presses twice does one round", () => {
  const taps = [tap("round", 1000), tap("round", 90_000), tap("round", 91_999), tap("round", 92_000)];
  const lane = laneAfter("endurance", taps);
  expect(lane.splits).toEqual([90_000, 92_000]);
  expect(lane.idle).toEqual([taps[0]?.id, taps[2]?.id]);
});

test("whoever stops keeps the rounds tapped and the reps told; a missed tap can be named", () => {
  const round = tap("round", 95_000);
  const results = (detail: object) =>
    laneAfter("endurance", [round, tap("not-finished", 150_000, detail)]).results;
  expect(results({ repsDone: 34 })).toEqual([
    { key: "mark", seen: { finished: false, roundsDone: 1, repsDone: 34 } },
  ]);
  expect(results({ repsDone: 3, roundsDone: 2 })).toEqual([
    { key: "mark", seen: { finished: false, roundsDone: 2, repsDone: 3 } },
  ]);
  expect(results({ repsDone: 3, roundsDone: 3 })).toEqual([]);
});

test("a lane set aside takes no further part and has no result; one that is done keeps it", () => {
  const aside = laneAfter("core", [tap("aside", 5000), tap("stop", 9000)], 9000);
  expect(aside).toMatchObject({ phase: "aside", results: [] });
  expect(aside.idle).toHaveLength(1);
  const done = laneAfter("core", [tap("stop", 9000), tap("aside", 9500)], 9500);
  expect(done).toMatchObject({ phase: "done", results: [{ seen: { held: 9000 } }] });
});
