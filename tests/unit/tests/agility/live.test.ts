import fc from "fast-check";
import { expect, test } from "vitest";
import type { HeatEvent } from "../../../../electron/domain/heats/heat.ts";
import { agility } from "../../../../electron/domain/tests/agility/protocol.ts";
import { back, laneAfter, tap } from "../../heats/taps.ts";

const seenOf = (events: readonly HeatEvent[]) => laneAfter("agility", events).results.map(({ seen }) => seen);

function countedTrial(direction: "cw" | "ccw", atMs: number, landings: number, touches: number): HeatEvent[] {
  const detail = { laps: Math.floor(landings / 4), extra: landings % 4, touches };
  return [tap("go", atMs, { direction }), tap("count", atMs + 12_000, detail)];
}

/** Landings spread over the ten seconds, the first at once and the last just before the end. */
function tappedTrial(direction: "cw" | "ccw", atMs: number, landings: number, touches: number): HeatEvent[] {
  const at = (index: number, of: number) => atMs + Math.floor((index * 9999) / Math.max(1, of - 1));
  return [
    tap("go", atMs, { direction }),
    ...Array.from({ length: landings }, (_, index) => tap("landing", at(index, landings))),
    ...Array.from({ length: touches }, (_, index) => tap("touch", at(index, touches) + 300)),
    tap("take", atMs + 12_000),
  ];
}

// The worked example of the rule (common practice, no source): 7 laps and 3 quadrants with two touches, then 29.
test("both directions make the mark", () => {
  const events = [...countedTrial("cw", 3000, 31, 2), ...countedTrial("ccw", 60_000, 29, 0)];
  const lane = laneAfter("agility", events);
  expect(lane).toMatchObject({ phase: "done", next: null, idle: [] });
  expect(lane.results.map(({ key }) => key)).toEqual(["cw", "ccw"]);
  const mark = agility.score(
    agility.defaults,
    lane.results.map(({ seen }) => seen),
  );
  expect(mark).toEqual({ state: "complete", value: 29.5 * 4 });
});

test("counted by eye or tapped landing by landing, it is the same attempt", () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 60 }), fc.integer({ min: 0, max: 9 }), (landings, touches) => {
      const counted = seenOf(countedTrial("ccw", 3000, landings, touches));
      expect(counted).toHaveLength(1);
      expect(seenOf(tappedTrial("ccw", 3000, landings, touches))).toEqual(counted);
    }),
  );
});

test("a landing counts from the start signal to a reaction after the end", () => {
  const go = tap("go", 3000, { direction: "cw" });
  const landings = [2999, 3000, 12_999, 13_249, 13_250].map((ms) => tap("landing", ms));
  const lane = laneAfter("agility", [go, ...landings], 13_250);
  expect(lane.trial).toMatchObject({ landings: 3, stage: "to-count", laps: 0, extra: 3 });
  expect(lane.idle).toEqual([landings[0]?.id, landings[4]?.id]);
});

test("a trial shows where it is", () => {
  const go = tap("go", 3000, { direction: "cw" });
  const at = (elapsed: number) => laneAfter("agility", [go], elapsed).trial?.stage;
  expect([0, 2999, 3000, 12_999, 13_000].map(at)).toEqual([
    ...["count-in", "count-in", "running"],
    ...["running", "to-count"],
  ]);
});

test("a trial can't be counted before it is over, nor one that never started", () => {
  const count = { laps: 7, extra: 3, touches: 0 };
  expect(seenOf([tap("count", 20_000, count)])).toEqual([]);
  expect(seenOf([tap("go", 3000, { direction: "cw" }), tap("count", 12_999, count)])).toEqual([]);
});

test("a false start is kept, and the trial is run again", () => {
  const events = [
    tap("go", 3000, { direction: "cw" }),
    tap("landing", 3100),
    tap("false-start", 3500),
    ...countedTrial("cw", 20_000, 28, 1),
  ];
  const lane = laneAfter("agility", events);
  expect(lane.lost).toEqual([{ direction: "cw", atMs: 3500, reason: "" }]);
  expect(lane.counted).toEqual([{ direction: "cw", laps: 7, extra: 0, touches: 1 }]);
  expect(lane).toMatchObject({ phase: "going", next: "ccw", idle: [] });
});

test("a counted trial is run again for a reason, and the first one is kept as lost", () => {
  const events = [
    ...countedTrial("cw", 3000, 28, 0),
    tap("rerun", 30_000, { direction: "cw", reason: "Somebody ran across" }),
  ];
  const lane = laneAfter("agility", events);
  expect(lane).toMatchObject({ results: [], next: "cw", phase: "going" });
  expect(lane.lost).toEqual([{ direction: "cw", atMs: 30_000, reason: "Somebody ran across" }]);
  expect(seenOf([...events, ...countedTrial("cw", 40_000, 30, 0)])).toEqual([
    { direction: "cw", laps: 7, extra: 2, touches: 0 },
  ]);
});

test("a second start of a running trial, and of a direction that is done, changes nothing", () => {
  const first = [tap("go", 3000, { direction: "cw" }), tap("go", 3400, { direction: "ccw" })];
  expect(laneAfter("agility", first)).toMatchObject({
    trial: { direction: "cw", fromMs: 3000 },
    idle: [first[1]?.id],
  });
  const again = [...countedTrial("cw", 3000, 28, 0), tap("go", 30_000, { direction: "cw" })];
  expect(laneAfter("agility", again).trial).toBeNull();
});

test("a count taken back leaves the trial to be counted again", () => {
  const events = countedTrial("cw", 3000, 28, 0);
  const [, count] = events;
  if (count === undefined) throw new Error("A trial is started and counted.");
  expect(laneAfter("agility", [...events, back(count)])).toMatchObject({
    trial: { direction: "cw", stage: "to-count" },
    results: [],
  });
});

test("a trial of earlier today counts, and is not entered again", () => {
  const prior = [{ direction: "cw" as const, laps: 7, extra: 0, touches: 0 }];
  expect(laneAfter("agility", [], 0, prior)).toMatchObject({ phase: "ready", next: "ccw", results: [] });
  const lane = laneAfter("agility", countedTrial("ccw", 3000, 29, 0), 20_000, prior);
  expect(lane.phase).toBe("done");
  expect(lane.results.map(({ key }) => key)).toEqual(["ccw"]);
});
