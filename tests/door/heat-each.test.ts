import { randomUUID } from "node:crypto";
import { expect, test } from "vitest";
import { cm } from "../lengths.ts";
import { refusalOf } from "./desk.ts";
import { by, entered, fromHeats, hallAt, lanesOf, liveOf, sent, startedHeat } from "./heat-hall.ts";
import { entry } from "./station-day.ts";

test("push-ups: three off end the lane, and taking the third back opens it again", async () => {
  const hall = await hallAt("push-up");
  const heatId = await startedHeat(hall, "push-up", 2);
  hall.clock.tick(21_000);
  const offs = [4, 5, 6].map((cadence) => sent(1, "off", cadence * 3000 + 400));
  await hall.heat.tap({ heatId, by, events: offs });
  expect(entered(hall)).toEqual([{ bib: 1, seen: { how: "cadences", cadences: "...xxx" }, stands: true }]);
  await hall.heat.undo({ heatId, eventId: offs[2]?.id ?? "", id: randomUUID(), by });
  hall.clock.tick(3000);
  await hall.heat.tap({ heatId, by, events: [sent(1, "stop", 25_500)] });
  expect(entered(hall).map(({ seen, stands }) => [seen, stands])).toEqual([
    [{ how: "cadences", cadences: "...xxx" }, false],
    [{ how: "cadences", cadences: "...xx..." }, true],
  ]);
});

test("a mark that comes late on the way still takes its place in time", async () => {
  const hall = await hallAt("push-up");
  const heatId = await startedHeat(hall, "push-up", 1);
  hall.clock.tick(30_000);
  await hall.heat.tap({ heatId, by, events: [sent(1, "stop", 24_100)] });
  await hall.heat.tap({ heatId, by, events: [sent(1, "off", 24_050)] });
  expect(entered(hall).map(({ seen, stands }) => [seen, stands])).toEqual([
    // The eighth came with the stop, so it did not count yet.
    [{ how: "cadences", cadences: "......." }, false],
    [{ how: "cadences", cadences: ".......x" }, true],
  ]);
});

test("a stop with the beat enters the lower result, and the answer that the rep was done enters the other in its place", async () => {
  const hall = await hallAt("push-up");
  const heatId = await startedHeat(hall, "push-up", 1);
  hall.clock.tick(42_000);
  await hall.heat.tap({ heatId, by, events: [sent(1, "stop", 39_100)] });
  expect((await lanesOf(hall, "push-up"))[0]).toMatchObject({ reps: 12, doubt: { without: 12, with: 13 } });
  await hall.heat.tap({ heatId, by, events: [sent(1, "last", 41_000, { cadence: 13, done: true })] });
  expect(entered(hall).map(({ seen, stands }) => [seen, stands])).toEqual([
    [{ how: "cadences", cadences: ".".repeat(12) }, false],
    [{ how: "cadences", cadences: ".".repeat(13) }, true],
  ]);
});

test("knee push-ups are said before the start, and are the athlete's way from then on", async () => {
  const hall = await hallAt("push-up");
  const { heatId } = await hall.heat.gather({ test: "push-up", heatId: randomUUID(), lanes: 2, by });
  await hall.heat.variant({ heatId, athleteId: hall.idOf(2), variant: "knee" });
  const { elapsedMs } = await hall.heat.start({ heatId, startedAgoMs: 250 });
  expect(elapsedMs).toBe(-5750);
  const fixed = hall.heat.variant({ heatId, athleteId: hall.idOf(2), variant: "full" });
  expect(await refusalOf(fixed)).toMatchObject({ key: "heat.runs" });
  hall.clock.tick(60_000);
  await hall.heat.tap({ heatId, by, events: [sent(null, "stop", 30_000)] });
  expect(fromHeats(hall).map(({ variant }) => variant)).toEqual(["full", "knee"]);
});

test("quadrant jump: both directions, a false start kept, a rerun voided with its reason", async () => {
  const hall = await hallAt("agility");
  const heatId = await startedHeat(hall, "agility", 1);
  const tap = (...events: ReturnType<typeof sent>[]) => hall.heat.tap({ heatId, by, events });
  await tap(sent(1, "go", 3000, { direction: "cw" }));
  hall.clock.tick(5000);
  await tap(sent(1, "false-start", 4000), sent(1, "go", 8000, { direction: "cw" }));
  hall.clock.tick(20_000);
  await tap(sent(1, "count", 20_000, { laps: 7, extra: 3, touches: 2 }));
  expect(entered(hall)).toEqual([
    { bib: 1, seen: { direction: "cw", laps: 7, extra: 3, touches: 2 }, stands: true },
  ]);
  await tap(sent(1, "rerun", 24_000, { direction: "cw", reason: "A ball rolled in" }));
  expect(fromHeats(hall)[0]?.void?.reason).toBe("A ball rolled in");
  hall.clock.tick(60_000);
  await tap(
    sent(1, "go", 40_000, { direction: "cw" }),
    sent(1, "count", 52_000, { laps: 7, extra: 0, touches: 0 }),
  );
  await tap(
    sent(1, "go", 60_000, { direction: "ccw" }),
    sent(1, "count", 72_000, { laps: 7, extra: 1, touches: 0 }),
  );
  const heat = liveOf(await hall.heat.view({ test: "agility" }));
  expect(heat.lane[0]?.told?.written).toEqual({ number: "28.5", unit: "landings" });
  expect((await lanesOf(hall, "agility"))[0]?.lost).toEqual([
    { direction: "cw", atMs: 4000, reason: "" },
    { direction: "cw", atMs: 24_000, reason: "A ball rolled in" },
  ]);
  expect(heat.allDone).toBe(true);
});

test("a trial keyed on paper is not run again: the lane goes on with the other direction", async () => {
  const hall = await hallAt("agility");
  await hall.station.enter(
    entry(hall.idOf(1), "agility", { direction: "cw", laps: 7, extra: 0, touches: 0 }),
  );
  hall.clock.pass(1);
  await startedHeat(hall, "agility", 1);
  expect((await lanesOf(hall, "agility"))[0]).toMatchObject({ next: "ccw", phase: "ready" });
});

test("vertical: what is typed is judged before it is kept, and a refusal keeps nothing", async () => {
  const hall = await hallAt("vertical");
  const heatId = await startedHeat(hall, "vertical", 2);
  hall.clock.tick(90_000);
  const tap = (...events: ReturnType<typeof sent>[]) => hall.heat.tap({ heatId, by, events });
  await tap(sent(1, "reach", 1000, { length: cm(219) }));
  const below = tap(sent(1, "touch", 2000, { length: cm(218) }));
  expect(await refusalOf(below)).toEqual({
    key: "test.vertical.plausibility.touchBelowReach",
    values: { cm: "218", inches: "85.83" },
  });
  expect(liveOf(await hall.heat.view({ test: "vertical" })).events).toHaveLength(1);
  await tap(sent(1, "touch", 3000, { length: cm(260) }), sent(1, "touch", 9000, { length: cm(264) }));
  await tap(sent(1, "touch", 15_000, { length: cm(262) }));
  const [lane] = liveOf(await hall.heat.view({ test: "vertical", lengths: "in" })).lane;
  expect(lane).toMatchObject({ told: { mark: { value: 45 * 200 }, written: { unit: "in" } } });
  expect(lane?.entered).toHaveLength(3);
});

test("one leap keyed on paper leaves the other trials to a heat", async () => {
  const hall = await hallAt("vertical");
  const seen = { standingReach: cm(210), touchReach: cm(250) };
  await hall.station.enter(entry(hall.idOf(1), "vertical", seen));
  const heatId = randomUUID();
  await hall.heat.place({ test: "vertical", heatId, lanes: 1, by, who: { bib: "1" } });
  expect((await lanesOf(hall, "vertical"))[0]).toMatchObject({ standingReach: cm(210), trialsLeft: 2 });
  hall.clock.tick(9000);
  const jumps = [251, 252].map((touch, index) => sent(1, "touch", 1000 * (index + 1), { length: cm(touch) }));
  await hall.heat.tap({ heatId, by, events: jumps });
  expect((await lanesOf(hall, "vertical"))[0]).toMatchObject({ heights: [8000, 8200, 8400], trialsLeft: 0 });
});

test("circuit: finishers by their last round, whoever stops by rounds and reps", async () => {
  const hall = await hallAt("endurance");
  const heatId = await startedHeat(hall, "endurance", 3);
  hall.clock.tick(400_000);
  const rounds = (lane: number, times: number[]) => times.map((ms) => sent(lane, "round", ms));
  await hall.heat.tap({
    heatId,
    by,
    events: [
      ...rounds(1, [100_000, 210_000, 330_010]),
      ...rounds(2, [120_000]),
      sent(2, "not-finished", 180_000, { repsDone: 34 }),
    ],
  });
  const heat = liveOf(await hall.heat.view({ test: "endurance" }));
  expect(heat.lane.map(({ told }) => told?.written ?? null)).toEqual([
    { number: "5:30.1", unit: "min:s" },
    { number: "", unit: "", note: { key: "marks.unfinished", values: { rounds: 1, reps: 34 } } },
    null,
  ]);
  const early = hall.heat.end({ heatId, by });
  expect(await refusalOf(early)).toEqual({ key: "heat.stillGoing", values: { count: 1, lanes: "3" } });
  await hall.heat.end({ heatId, by, setAside: true });
  expect((await hall.heat.view({ test: "endurance" })).next.map(({ who }) => who.bib)).toContain(3);
});
