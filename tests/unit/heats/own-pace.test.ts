import { expect, test } from "vitest";
import { readWhat } from "../../../electron/domain/heats/fold.ts";
import { vertical } from "../../../electron/domain/tests/vertical/protocol.ts";
import { cm, inches } from "../../lengths.ts";
import { back, laneAfter, tap } from "./taps.ts";

test("the reach once, then the trials: the best so far is shown", () => {
  const reach = tap("reach", 1000, { length: cm(219) });
  const touches = [260, 264, 262].map((touch, index) =>
    tap("touch", 5000 + index * 9000, { length: cm(touch) }),
  );
  const seen = [0, 1, 2, 3].map((count) => {
    const { phase, best, trialsLeft, heights } = laneAfter("vertical", [reach, ...touches.slice(0, count)]);
    return { phase, best, trialsLeft, heights };
  });
  expect(seen).toEqual([
    { phase: "going", best: null, trialsLeft: 3, heights: [] },
    { phase: "going", best: 8200, trialsLeft: 2, heights: [8200] },
    { phase: "going", best: 9000, trialsLeft: 1, heights: [8200, 9000] },
    { phase: "done", best: 9000, trialsLeft: 0, heights: [8200, 9000, 8600] },
  ]);
  const { results } = laneAfter("vertical", [reach, ...touches]);
  expect(results.map(({ key }) => key)).toEqual(touches.map(({ id }) => id));
  const attempts = results.map(({ seen: each }) => vertical.attempt.parse(each));
  expect(vertical.score(vertical.defaults, attempts)).toEqual({ state: "complete", value: 9000 });
});

test("no touch before the reach, none after the last trial, none after enough", () => {
  const early = tap("touch", 10, { length: cm(260) });
  const reach = tap("reach", 1000, { length: cm(219) });
  const trials = [1, 2, 3, 4].map((nth) => tap("touch", nth * 10_000, { length: cm(260 + nth) }));
  expect(laneAfter("vertical", [early, reach, ...trials]).idle).toEqual([early.id, trials[3]?.id]);
  const enough = [reach, ...trials.slice(0, 1), tap("enough", 15_000), ...trials.slice(1)];
  const lane = laneAfter("vertical", enough);
  expect(lane).toMatchObject({ phase: "done", trialsLeft: 0, heights: [8400] });
  expect(lane.idle).toHaveLength(3);
  expect(laneAfter("vertical", [reach, tap("enough", 2000)]).phase).toBe("going");
});

test("a trial taken back leaves the others what they were", () => {
  const reach = tap("reach", 1000, { length: cm(219) });
  const touches = [260, 264].map((touch, index) => tap("touch", 5000 + index * 9000, { length: cm(touch) }));
  const [first, second] = touches;
  if (first === undefined || second === undefined) throw new Error("There are two touches.");
  expect(laneAfter("vertical", [reach, ...touches, back(first, 9000)]).results).toEqual([
    { key: second.id, seen: { standingReach: cm(219), touchReach: cm(264) } },
  ]);
});

test("reach, mass and trials of earlier today go on", () => {
  const prior = [{ standingReach: cm(210), touchReach: cm(250), bodyMass: 61_000 }];
  expect(laneAfter("vertical", [], 0, prior)).toMatchObject({
    ...{ phase: "going", standingReach: cm(210), best: 8000, trialsLeft: 2, results: [] },
  });
  const touch = tap("touch", 4000, { length: cm(252) });
  expect(laneAfter("vertical", [touch], 4000, prior).results).toEqual([
    { key: touch.id, seen: { standingReach: cm(210), touchReach: cm(252), bodyMass: 61_000 } },
  ]);
});

test("a tap that a device kept from before, in millimetres, is the reading that was rounded to them", () => {
  const reach = readWhat("vertical", { kind: "reach", detail: { mm: 2197, bodyMass: 61_000 } });
  expect(reach).toEqual({ kind: "reach", detail: { length: inches(86.5), bodyMass: 61_000 } });
  expect(readWhat("vertical", { kind: "touch", detail: { mm: 2610 } })?.detail).toEqual({ length: cm(261) });
  expect(readWhat("vertical", { kind: "touch", detail: { mm: 5001 } })).toBeNull();
});
