import { randomUUID } from "node:crypto";
import { expect, test } from "vitest";
import { calls } from "../../electron/store/tables/calls.ts";
import { cm } from "../lengths.ts";
import { refusalOf } from "./desk.ts";
import { bibsByLane, by, type Hall, hallAt, sent, startedHeat } from "./heat-hall.ts";
import { bringTo, entry, reps, stationDay } from "./station-day.ts";

const test1 = "push-up" as const;
const gather = (hall: Hall, lanes: number, heatId: string = randomUUID()) =>
  hall.heat.gather({ test: test1, heatId, lanes, by });
const view = (hall: Hall) => hall.heat.view({ test: test1 });
const calledBibs = (hall: Hall) => {
  const bibs = new Map([1, 2, 3, 4, 5, 6].map((bib) => [hall.idOf(bib), bib]));
  return calls(hall.desk.store.db, hall.dayId).map(({ athleteId }) => bibs.get(athleteId));
};

test("calling the next fills the lanes in turn, and the board shows the calls until the start", async () => {
  const hall = await hallAt(test1);
  const { heatId, placed } = await gather(hall, 4);
  expect(placed.map(({ lane, variant }) => [lane, variant])).toEqual(
    [1, 2, 3, 4].map((lane) => [lane, "full"]),
  );
  expect(calledBibs(hall)).toEqual([1, 2, 3, 4]);
  expect((await view(hall)).next.map(({ who }) => who.bib)).toEqual([5, 6]);
  await hall.heat.start({ heatId, startedAgoMs: 0 });
  expect(calledBibs(hall)).toEqual([]);
  // Whoever is in a lane is not called to the same test by the keyed station either.
  expect(await hall.station.callNext({ test: test1 })).toEqual({ athleteId: hall.idOf(5) });
});

test("rest holds in the lanes too, as long as the day says", async () => {
  const day = await stationDay();
  await bringTo(day, 1, "agility");
  day.clock.pass(3);
  await bringTo(day, 2, "agility");
  day.clock.pass(2);
  const hall: Hall = { ...day, heat: day.as("station").heat };
  const heatId = randomUUID();
  const { placed, resting } = await hall.heat.gather({ test: "agility", heatId, lanes: 2, by });
  expect(placed.map(({ athleteId }) => athleteId)).toEqual([hall.idOf(1)]);
  const readyAt = new Date(day.clock.at.getTime() + 180_000).toISOString();
  expect(resting).toEqual({ bib: 2, readyAt, soon: false });
  const tired = { test: "agility" as const, heatId, lanes: 2, by, who: { bib: "2" } };
  expect(await refusalOf(hall.heat.place(tired))).toMatchObject({ key: "heat.rests", values: { count: 3 } });
  expect(await hall.heat.place({ ...tired, evenResting: true })).toMatchObject({ lane: 2 });
});

test("a free lane is worth holding for somebody who has rested within a minute", async () => {
  const day = await stationDay();
  await bringTo(day, 1, "agility");
  day.clock.pass(1);
  await bringTo(day, 2, "agility");
  day.clock.pass(4);
  const { heat } = day.as("station");
  const wanted = { test: "agility" as const, heatId: randomUUID(), lanes: 2, by };
  const { placed, resting } = await heat.gather(wanted);
  expect(placed.map(({ athleteId }) => athleteId)).toEqual([day.idOf(1)]);
  expect(resting).toMatchObject({ bib: 2, soon: true });
  day.clock.pass(1);
  const again = await heat.gather(wanted);
  expect(again.placed.map(({ athleteId }) => athleteId)).toEqual([day.idOf(2)]);
  expect(again.resting).toBeNull();
});

test("a heat of nobody is not made, and the refusal says why", async () => {
  const hall = await hallAt("core");
  expect(await refusalOf(gather(hall, 2))).toEqual({ key: "station.nobodyWaits" });
  expect((await view(hall)).heat).toBeNull();
  const tired = await stationDay();
  await bringTo(tired, 1, "agility");
  const heat = tired.as("station").heat;
  const call = heat.gather({ test: "agility", heatId: randomUUID(), lanes: 2, by });
  expect(await refusalOf(call)).toEqual({ key: "station.allRest", values: { bib: 1, count: 5 } });
  expect((await heat.view({ test: "agility" })).heat).toBeNull();
});

test("whoever was called and is absent goes to the end of the queue, counted, and can be called again", async () => {
  const hall = await hallAt(test1);
  const { heatId } = await gather(hall, 2);
  hall.clock.pass(2);
  const missing = { heatId, athleteId: hall.idOf(1), id: randomUUID(), by };
  await hall.heat.absent(missing);
  await gather(hall, 2, heatId);
  // Sent again after somebody else took the lane, it hits nobody.
  await hall.heat.absent(missing);
  expect(bibsByLane(await view(hall))).toEqual([3, 2]);
  const { next } = await view(hall);
  expect(next.map(({ who, absences }) => [who.bib, absences])).toEqual([
    [4, 0],
    [5, 0],
    [6, 0],
    [1, 1],
  ]);
  expect(calledBibs(hall).sort()).toEqual([2, 3]);
  expect((await gather(hall, 6, heatId)).placed.map(({ athleteId }) => athleteId)).toEqual(
    [4, 5, 6, 1].map(hall.idOf),
  );
});

test("whoever is sent back keeps their place", async () => {
  const hall = await hallAt(test1);
  const { heatId } = await gather(hall, 3);
  const sentBack = { heatId, athleteId: hall.idOf(1) };
  await hall.heat.sendBack(sentBack);
  await hall.heat.sendBack(sentBack);
  expect(bibsByLane(await view(hall))).toEqual([0, 2, 3]);
  expect((await view(hall)).next.map(({ who }) => who.bib)).toEqual([1, 4, 5, 6]);
});

test("lanes are moved and swapped until the start; the same move again changes nothing", async () => {
  const hall = await hallAt(test1);
  const { heatId } = await gather(hall, 3);
  await hall.heat.move({ heatId, athleteId: hall.idOf(1), to: 3 });
  await hall.heat.move({ heatId, athleteId: hall.idOf(1), to: 3 });
  expect(bibsByLane(await view(hall))).toEqual([3, 2, 1]);
  await hall.heat.sendBack({ heatId, athleteId: hall.idOf(2) });
  await hall.heat.move({ heatId, athleteId: hall.idOf(3), to: 2 });
  expect(bibsByLane(await view(hall))).toEqual([0, 3, 1]);
  expect(await refusalOf(hall.heat.move({ heatId, athleteId: hall.idOf(3), to: 4 }))).toMatchObject({
    key: "heat.noLane",
  });
  await hall.heat.start({ heatId, startedAgoMs: 0 });
  const late = [
    hall.heat.move({ heatId, athleteId: hall.idOf(3), to: 1 }),
    hall.heat.sendBack({ heatId, athleteId: hall.idOf(3) }),
    hall.heat.absent({ heatId, athleteId: hall.idOf(3), id: randomUUID(), by }),
    gather(hall, 3, heatId),
  ];
  for (const call of late) expect(await refusalOf(call)).toMatchObject({ key: "heat.runs" });
  expect(bibsByLane(await view(hall))).toEqual([0, 3, 1]);
});

test("a bib that is scanned finds its lane, or takes a free one", async () => {
  const hall = await hallAt(test1);
  const heatId = randomUUID();
  const scan = (bib: string, more: object = {}) =>
    hall.heat.place({ test: test1, heatId, lanes: 3, by, who: { bib }, ...more });
  expect(await scan("5")).toMatchObject({ heatId, lane: 1 });
  expect(await scan(" 5 ")).toMatchObject({ heatId, lane: 1 });
  expect(await scan("2", { lane: 3, variant: "knee" })).toEqual({
    ...{ heatId, lane: 3, variant: "knee", athleteId: hall.idOf(2) },
  });
  await hall.heat.start({ heatId, startedAgoMs: 0 });
  expect(await scan("5")).toMatchObject({ lane: 1 });
  const refusals = [
    [scan("77"), "station.noBib"],
    [scan("x"), "station.badBib"],
    [scan("1"), "heat.runs"],
  ] as const;
  for (const [call, key] of refusals) expect(await refusalOf(call)).toMatchObject({ key });
});

test("nobody is put in a lane who may not do the test now, nor in a lane that is taken", async () => {
  const hall = await hallAt(test1);
  const heatId = randomUUID();
  const place = (bib: number, more: object = {}) =>
    hall.heat.place({ test: test1, heatId, lanes: 1, by, who: { bib: String(bib) }, ...more });
  await hall.station.enter(entry(hall.idOf(1), test1, reps(20)));
  expect(await refusalOf(place(1))).toMatchObject({ key: "station.done" });
  expect(await refusalOf(place(2, { variant: "one-handed" }))).toMatchObject({ key: "station.variant" });
  await place(2);
  expect(await refusalOf(place(3, { lane: 1 }))).toMatchObject({ key: "heat.takenLane" });
  expect(await refusalOf(place(3))).toMatchObject({ key: "heat.full" });
  const plank = hall.heat.place({ test: "core", heatId: randomUUID(), lanes: 1, by, who: { bib: "3" } });
  expect(await refusalOf(plank)).toMatchObject({ key: "test.push-up.first" });
  expect((await hall.heat.view({ test: "core" })).heat).toBeNull();
  const elsewhere = hall.heat.place({ test: "core", heatId: randomUUID(), lanes: 1, by, who: { bib: "2" } });
  expect(await refusalOf(elsewhere)).toMatchObject({ key: "heat.elsewhere" });
});

test("at their own pace lanes come and go until their first tap", async () => {
  const hall = await hallAt("vertical");
  const heatId = await startedHeat(hall, "vertical", 2);
  hall.clock.tick(5000);
  await hall.heat.tap({ heatId, by, events: [sent(1, "reach", 1000, { length: cm(219) })] });
  const begun = hall.heat.sendBack({ heatId, athleteId: hall.idOf(1) });
  expect(await refusalOf(begun)).toMatchObject({ key: "heat.begun", values: { lane: 1 } });
  await hall.heat.sendBack({ heatId, athleteId: hall.idOf(2) });
  await hall.heat.gather({ test: "vertical", heatId, lanes: 3, by });
  expect(bibsByLane(await hall.heat.view({ test: "vertical" }))).toEqual([1, 2, 3]);
});

test("a heat in which everybody is done ends when the next are called", async () => {
  const hall = await hallAt(test1);
  const heatId = await startedHeat(hall, test1, 2);
  hall.clock.tick(60_000);
  await hall.heat.tap({ heatId, by, events: [sent(1, "stop", 30_000)] });
  expect(await refusalOf(gather(hall, 2))).toMatchObject({ key: "heat.runs" });
  await hall.heat.tap({ heatId, by, events: [sent(2, "stop", 31_000)] });
  const next = await gather(hall, 2);
  expect(next.heatId).not.toBe(heatId);
  expect(bibsByLane(await view(hall))).toEqual([3, 4]);
  expect((await view(hall)).ended).toMatchObject([{ heatId, ending: "done" }]);
});

test("two windows that call at once make one heat", async () => {
  const hall = await hallAt(test1);
  const first = await gather(hall, 2);
  const second = await gather(hall, 2);
  expect(second).toMatchObject({ heatId: first.heatId, placed: [] });
});

test("whoever is still in a lane is not called to the next test", async () => {
  const hall = await hallAt("vertical");
  const heatId = await startedHeat(hall, "vertical", 1);
  hall.clock.tick(5000);
  const leap = [sent(1, "reach", 1000, { length: cm(219) }), sent(1, "touch", 2000, { length: cm(260) })];
  await hall.heat.tap({ heatId, by, events: leap });
  hall.clock.pass(10);
  const plank = hall.heat.gather({ test: "core", heatId: randomUUID(), lanes: 1, by });
  expect(await refusalOf(plank)).toEqual({ key: "station.nobodyWaits" });
  await hall.heat.tap({ heatId, by, events: [sent(1, "enough", 3000)] });
  await hall.heat.end({ heatId, by });
  const called = await hall.heat.gather({ test: "core", heatId: randomUUID(), lanes: 1, by });
  expect(called.placed.map(({ athleteId }) => athleteId)).toEqual([hall.idOf(1)]);
});
