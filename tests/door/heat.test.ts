import { randomUUID } from "node:crypto";
import { expect, test } from "vitest";
import { refusalOf } from "./desk.ts";
import { by, entered, fromHeats, hallAt, lanesOf, liveOf, sent, startedHeat } from "./heat-hall.ts";
import { entry, hold, past } from "./station-day.ts";

test("six planks on one clock: each stop enters its mark at once", async () => {
  const hall = await hallAt("core");
  const heatId = await startedHeat(hall, "core", 6);
  hall.clock.tick(95_000);
  const first = sent(3, "stop", 90_500);
  expect(await hall.heat.tap({ heatId, by, events: [first] })).toEqual({
    events: [{ id: first.id, outcome: "taken" }],
  });
  expect(entered(hall)).toEqual([{ bib: 3, seen: { held: 90_500 }, stands: true }]);
  const view = await hall.heat.view({ test: "core" });
  expect(liveOf(view).lane[2]).toMatchObject({
    told: {
      written: { number: "1:30", note: { key: "stages.first.other-foot" } },
      news: { standing: "first" },
    },
    ...{ doubts: [], trouble: null, free: false },
    entered: [{ key: "mark", void: false, corrected: false }],
  });
  expect(liveOf(view).allDone).toBe(false);
  hall.clock.tick(60_000);
  const rest = [1, 2, 4, 5, 6].map((lane) => sent(lane, "stop", 100_000 + lane));
  await hall.heat.tap({ heatId, by, events: rest });
  expect(liveOf(await hall.heat.view({ test: "core" })).allDone).toBe(true);
  await hall.heat.end({ heatId, by });
  const after = await hall.heat.view({ test: "core" });
  expect(after).toMatchObject({
    heat: null,
    next: [],
    ended: [{ heatId, ending: "done", bibs: [1, 2, 3, 4, 5, 6] }],
  });
  expect(hall.faults).toEqual([]);
});

test("the same taps sent again change nothing, together or one by one", async () => {
  const hall = await hallAt("core");
  const heatId = await startedHeat(hall, "core", 3);
  hall.clock.tick(80_000);
  const events = [sent(1, "stop", 70_000), sent(2, "stop", 70_200), sent(1, "stop", 75_000)];
  const outcomes = async (again: typeof events) =>
    (await hall.heat.tap({ heatId, by, events: again })).events.map(({ outcome }) => outcome);
  expect(await outcomes(events)).toEqual(["taken", "taken", "idle"]);
  const before = { attempts: fromHeats(hall), view: await hall.heat.view({ test: "core" }) };
  expect(await outcomes(events)).toEqual(["known", "known", "known"]);
  for (const event of events) expect(await outcomes([event])).toEqual(["known"]);
  expect({ attempts: fromHeats(hall), view: await hall.heat.view({ test: "core" }) }).toEqual(before);
  expect(await outcomes([...events, sent(3, "stop", 76_000)])).toEqual(["known", "known", "known", "taken"]);
  expect(entered(hall)).toHaveLength(3);
});

test("a tap is taken back within ten seconds: its mark is void and the lane goes on", async () => {
  const hall = await hallAt("core");
  const heatId = await startedHeat(hall, "core", 2);
  hall.clock.tick(60_000);
  const slip = sent(1, "stop", 60_000);
  await hall.heat.tap({ heatId, by, events: [slip] });
  hall.clock.tick(10_000);
  const undo = { heatId, eventId: slip.id, id: randomUUID(), by };
  await hall.heat.undo(undo);
  await hall.heat.undo(undo);
  expect(entered(hall)).toEqual([{ bib: 1, seen: { held: 60_000 }, stands: false }]);
  expect(fromHeats(hall)[0]?.void).toMatchObject({ reason: "The tap was taken back.", by });
  expect((await lanesOf(hall, "core"))[0]).toMatchObject({ phase: "going", heldMs: 70_000 });
  hall.clock.tick(5000);
  await hall.heat.tap({ heatId, by, events: [sent(1, "stop", 74_000)] });
  expect(entered(hall)).toEqual([
    { bib: 1, seen: { held: 60_000 }, stands: false },
    { bib: 1, seen: { held: 74_000 }, stands: true },
  ]);
});

test("after ten seconds a slip is corrected with a reason, and the heat leaves the correction alone", async () => {
  const hall = await hallAt("core");
  const heatId = await startedHeat(hall, "core", 2);
  hall.clock.tick(60_000);
  const slip = sent(1, "stop", 60_000);
  await hall.heat.tap({ heatId, by, events: [slip] });
  hall.clock.tick(10_001);
  const late = hall.heat.undo({ heatId, eventId: slip.id, id: randomUUID(), by });
  expect(await refusalOf(late)).toMatchObject({ key: "heat.undo.late" });
  const attemptId = fromHeats(hall)[0]?.id ?? "";
  const replaces = { attemptId, reason: "Stopped the wrong lane" };
  await hall.station.enter(entry(hall.idOf(1), "core", hold(65), { replaces }));
  await hall.heat.tap({ heatId, by, events: [sent(2, "stop", 69_000)] });
  const [first, second] = liveOf(await hall.heat.view({ test: "core" })).lane;
  expect(first).toMatchObject({
    told: { written: { number: "1:05" } },
    entered: [{ attemptId, void: true, corrected: true }],
    prior: [],
    trouble: null,
  });
  expect(second?.told?.written.number).toBe("1:09");
});

test("a doubtful mark is entered and shown as doubtful; nothing is asked while people hold", async () => {
  const hall = await hallAt("core");
  past(hall, 1, "core", 200, "2026-05-02");
  const heatId = await startedHeat(hall, "core", 2);
  hall.clock.tick(20_000);
  await hall.heat.tap({ heatId, by, events: [sent(1, "stop", 14_000)] });
  const [lane] = liveOf(await hall.heat.view({ test: "core" })).lane;
  expect(lane?.doubts.map(({ key }) => key)).toEqual([
    "plausibility.core.low",
    "plausibility.differsFromLast",
  ]);
  expect(entered(hall)).toEqual([{ bib: 1, seen: { held: 14_000 }, stands: true }]);
});

test("a clock that can't be right is kept, not entered, and the lane says why", async () => {
  const hall = await hallAt("core");
  const heatId = await startedHeat(hall, "core", 2);
  hall.clock.tick(3_700_000);
  await hall.heat.tap({ heatId, by, events: [sent(1, "stop", 3_650_000)] });
  const heat = liveOf(await hall.heat.view({ test: "core" }));
  expect(heat.lane[0]).toMatchObject({
    trouble: { key: "plausibility.core.tooHigh" },
    told: null,
    entered: [],
  });
  expect(heat.events).toHaveLength(1);
  expect(entered(hall)).toEqual([]);
});

test("whoever was keyed by hand meanwhile is not entered twice, and no tap is lost", async () => {
  const hall = await hallAt("core");
  const heatId = await startedHeat(hall, "core", 2);
  await hall.station.enter(entry(hall.idOf(1), "core", hold(65)));
  hall.clock.tick(90_000);
  await hall.heat.tap({ heatId, by, events: [sent(1, "stop", 80_000), sent(2, "stop", 81_000)] });
  expect(entered(hall)).toEqual([{ bib: 2, seen: { held: 81_000 }, stands: true }]);
  const [lane] = liveOf(await hall.heat.view({ test: "core" })).lane;
  expect(lane).toMatchObject({
    trouble: { key: "heat.keyedMeanwhile" },
    told: { written: { number: "1:05" } },
  });
});

test("push-ups: three off end the lane, and taking the third back opens it again", async () => {
  const hall = await hallAt("push-up");
  const heatId = await startedHeat(hall, "push-up", 2);
  hall.clock.tick(21_000);
  const offs = [4, 5, 6].map((cadence) => sent(1, "off", cadence * 3000 + 400));
  await hall.heat.tap({ heatId, by, events: offs });
  expect(entered(hall)).toEqual([{ bib: 1, seen: { how: "cadences", cadences: "...xxx" }, stands: true }]);
  await hall.heat.undo({ heatId, eventId: offs[2]?.id ?? "", id: randomUUID(), by });
  hall.clock.tick(3000);
  await hall.heat.tap({ heatId, by, events: [sent(1, "stop", 24_000)] });
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
    [{ how: "cadences", cadences: "........" }, false],
    [{ how: "cadences", cadences: ".......x" }, true],
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
  await tap(sent(1, "reach", 1000, { mm: 2190 }));
  const below = tap(sent(1, "touch", 2000, { mm: 2180 }));
  expect(await refusalOf(below)).toEqual({ key: "plausibility.vertical.touchBelowReach" });
  expect(liveOf(await hall.heat.view({ test: "vertical" })).events).toHaveLength(1);
  await tap(sent(1, "touch", 3000, { mm: 2600 }), sent(1, "touch", 9000, { mm: 2640 }));
  await tap(sent(1, "touch", 15_000, { mm: 2620 }));
  const [lane] = liveOf(await hall.heat.view({ test: "vertical", lengths: "in" })).lane;
  expect(lane).toMatchObject({ told: { mark: { value: 450 }, written: { unit: "in" } } });
  expect(lane?.entered).toHaveLength(3);
});

test("one leap keyed on paper leaves the other trials to a heat", async () => {
  const hall = await hallAt("vertical");
  const seen = { standingReach: 2100, touchReach: 2500 };
  await hall.station.enter(entry(hall.idOf(1), "vertical", seen));
  const heatId = randomUUID();
  await hall.heat.place({ test: "vertical", heatId, lanes: 1, by, who: { bib: "1" } });
  expect((await lanesOf(hall, "vertical"))[0]).toMatchObject({ standingReach: 2100, trialsLeft: 2 });
  hall.clock.tick(9000);
  const jumps = [2510, 2520].map((mm, index) => sent(1, "touch", 1000 * (index + 1), { mm }));
  await hall.heat.tap({ heatId, by, events: jumps });
  expect((await lanesOf(hall, "vertical"))[0]).toMatchObject({ heights: [400, 410, 420], trialsLeft: 0 });
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

test("a heat that is called off stays, what it entered is void, and the same lanes start again", async () => {
  const hall = await hallAt("core");
  const heatId = await startedHeat(hall, "core", 3);
  hall.clock.tick(20_000);
  await hall.heat.tap({ heatId, by, events: [sent(2, "stop", 19_000)] });
  const again = randomUUID();
  const off = { heatId, by, reason: "The signal came early", again };
  await hall.heat.callOff(off);
  await hall.heat.callOff(off);
  expect(entered(hall)).toEqual([{ bib: 2, seen: { held: 19_000 }, stands: false }]);
  const view = await hall.heat.view({ test: "core" });
  expect(view.ended).toMatchObject([{ heatId, ending: "called-off", reason: "The signal came early" }]);
  expect(liveOf(view)).toMatchObject({ heatId: again, state: "gathering", events: [], elapsedMs: null });
  expect(liveOf(view).lane.map(({ who }) => who.bib)).toEqual([1, 2, 3]);
  const late = hall.heat.tap({ heatId, by, events: [sent(1, "stop", 20_000)] });
  expect(await refusalOf(late)).toMatchObject({ key: "heat.ended" });
});

test("a tap that can't belong to the heat is refused, and none of its company is kept", async () => {
  const hall = await hallAt("core");
  const heatId = await startedHeat(hall, "core", 2);
  hall.clock.tick(60_000);
  const good = sent(1, "stop", 50_000);
  const bad: [ReturnType<typeof sent>, string][] = [
    [sent(1, "round", 50_000), "heat.badTap"],
    [sent(1, "undo", 50_000, { eventId: good.id }), "heat.badTap"],
    [sent(5, "stop", 50_000), "heat.emptyLane"],
    [sent(2, "stop", 70_001), "heat.ahead"],
  ];
  for (const [event, key] of bad) {
    expect(await refusalOf(hall.heat.tap({ heatId, by, events: [good, event] }))).toMatchObject({ key });
  }
  const unknown = hall.heat.tap({ heatId: randomUUID(), by, events: [good] });
  expect(await refusalOf(unknown)).toMatchObject({ key: "heat.unknown" });
  expect(await refusalOf(hall.heat.tap({ heatId, by: "", events: [good] }))).toMatchObject({
    key: "station.initials",
  });
  expect(liveOf(await hall.heat.view({ test: "core" })).events).toEqual([]);
});

test("live heats are the organiser's and the stations'", async () => {
  const hall = await hallAt("core");
  for (const role of ["check-in", "board"] as const) {
    await expect(hall.as(role).heat.view({ test: "core" })).rejects.toMatchObject({ code: "FORBIDDEN" });
  }
  expect((await hall.as("organiser").heat.view({ test: "core" })).heat).toBeNull();
});
