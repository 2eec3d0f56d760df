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
    ...{ doubts: [], doubted: null, trouble: null, free: false },
    entered: [{ key: "mark", attempt: { void: null }, corrected: false }],
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
  expect(fromHeats(hall)[0]?.void).toMatchObject({ reason: "The tap was undone.", by });
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
    entered: [{ attempt: { replaces: attemptId, void: null }, corrected: true }],
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
    "test.core.plausibility.low",
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
    trouble: { key: "test.core.plausibility.tooHigh" },
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

test("a day does not close under people who are holding a plank", async () => {
  const hall = await hallAt("core");
  const heatId = await startedHeat(hall, "core", 2);
  hall.clock.tick(30_000);
  const organiser = hall.as("organiser").day;
  const close = organiser.close({ dayId: hall.dayId });
  expect(await refusalOf(close)).toEqual({ key: "heat.beforeClosing", values: { count: 1 } });
  await hall.heat.tap({ heatId, by, events: [sent(1, "stop", 29_000), sent(2, "stop", 29_500)] });
  await organiser.close({ dayId: hall.dayId });
  expect(entered(hall)).toHaveLength(2);
});

test("a heat that is only gathered does not keep the day from closing", async () => {
  const hall = await hallAt("core");
  await hall.heat.gather({ test: "core", heatId: randomUUID(), lanes: 2, by });
  await hall.as("organiser").day.close({ dayId: hall.dayId });
});
