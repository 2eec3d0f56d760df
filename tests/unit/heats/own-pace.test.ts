import { expect, test } from "vitest";
import { vertical } from "../../../electron/domain/tests/vertical/protocol.ts";
import { back, laneAfter, tap } from "./taps.ts";

test("the reach once, then the trials: the best so far is shown", () => {
  const reach = tap("reach", 1000, { mm: 2190 });
  const touches = [2600, 2640, 2620].map((mm, index) => tap("touch", 5000 + index * 9000, { mm }));
  const seen = [0, 1, 2, 3].map((count) => {
    const { phase, best, trialsLeft, heights } = laneAfter("vertical", [reach, ...touches.slice(0, count)]);
    return { phase, best, trialsLeft, heights };
  });
  expect(seen).toEqual([
    { phase: "going", best: null, trialsLeft: 3, heights: [] },
    { phase: "going", best: 410, trialsLeft: 2, heights: [410] },
    { phase: "going", best: 450, trialsLeft: 1, heights: [410, 450] },
    { phase: "done", best: 450, trialsLeft: 0, heights: [410, 450, 430] },
  ]);
  const { results } = laneAfter("vertical", [reach, ...touches]);
  expect(results.map(({ key }) => key)).toEqual(touches.map(({ id }) => id));
  const attempts = results.map(({ seen: each }) => vertical.attempt.parse(each));
  expect(vertical.score(vertical.defaults, attempts)).toEqual({ state: "complete", value: 450 });
});

test("no touch before the reach, none after the last trial, none after enough", () => {
  const early = tap("touch", 10, { mm: 2600 });
  const reach = tap("reach", 1000, { mm: 2190 });
  const trials = [1, 2, 3, 4].map((nth) => tap("touch", nth * 10_000, { mm: 2600 + nth }));
  expect(laneAfter("vertical", [early, reach, ...trials]).idle).toEqual([early.id, trials[3]?.id]);
  const enough = [reach, ...trials.slice(0, 1), tap("enough", 15_000), ...trials.slice(1)];
  const lane = laneAfter("vertical", enough);
  expect(lane).toMatchObject({ phase: "done", trialsLeft: 0, heights: [411] });
  expect(lane.idle).toHaveLength(3);
  expect(laneAfter("vertical", [reach, tap("enough", 2000)]).phase).toBe("going");
});

test("a trial taken back leaves the others what they were", () => {
  const reach = tap("reach", 1000, { mm: 2190 });
  const touches = [2600, 2640].map((mm, index) => tap("touch", 5000 + index * 9000, { mm }));
  const [first, second] = touches;
  if (first === undefined || second === undefined) throw new Error("There are two touches.");
  expect(laneAfter("vertical", [reach, ...touches, back(first, 9000)]).results).toEqual([
    { key: second.id, seen: { standingReach: 2190, touchReach: 2640 } },
  ]);
});

test("reach, mass and trials of earlier today go on", () => {
  const prior = [{ standingReach: 2100, touchReach: 2500, bodyMass: 61_000 }];
  expect(laneAfter("vertical", [], 0, prior)).toMatchObject({
    ...{ phase: "going", standingReach: 2100, best: 400, trialsLeft: 2, results: [] },
  });
  const touch = tap("touch", 4000, { mm: 2520 });
  expect(laneAfter("vertical", [touch], 4000, prior).results).toEqual([
    { key: touch.id, seen: { standingReach: 2100, touchReach: 2520, bodyMass: 61_000 } },
  ]);
});
