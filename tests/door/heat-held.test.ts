import { randomUUID } from "node:crypto";
import { expect, test } from "vitest";
import type { TestCode } from "../../electron/domain/tests/registry.ts";
import { cm } from "../lengths.ts";
import { refusalOf } from "./desk.ts";
import { by, type Hall, hallAt, liveOf, sent, startedHeat } from "./heat-hall.ts";

const next = async (hall: Hall, test: TestCode) =>
  (await hall.heat.view({ test })).next.map(({ who }) => who.bib);

/** Push-ups in four lanes of which so many are stopped, and nobody touches that station again. */
async function leftBehind(stopped: number): Promise<Hall> {
  const hall = await hallAt("push-up");
  const heatId = await startedHeat(hall, "push-up", 4);
  hall.clock.tick(60_000);
  const events = [1, 2, 3, 4].slice(0, stopped).map((lane) => sent(lane, "stop", 50_000));
  await hall.heat.tap({ heatId, by, events });
  return hall;
}

test("a lane that is done holds nobody: the next station sees, calls and takes them at once", async () => {
  const hall = await leftBehind(3);
  expect(await next(hall, "agility")).toEqual([1, 2, 3]);
  hall.clock.pass(6);
  const { placed } = await hall.heat.gather({ test: "agility", heatId: randomUUID(), lanes: 2, by });
  expect(placed.map(({ athleteId }) => athleteId)).toEqual([1, 2].map(hall.idOf));
  // By hand, and by a call of the keyed station.
  const wanted = {
    test: "agility" as const,
    heatId: liveOf(await hall.heat.view({ test: "agility" })).heatId,
  };
  expect(await hall.heat.place({ ...wanted, lanes: 3, by, who: { bib: "3" } })).toMatchObject({ lane: 3 });
});

test("the keyed station calls whoever is done elsewhere, and says who is ready first", async () => {
  const hall = await leftBehind(3);
  // They stopped just now, and rest five minutes from there.
  expect(await refusalOf(hall.station.callNext({ test: "agility" }))).toEqual({
    key: "station.allRest",
    values: { bib: 1, count: 5 },
  });
  hall.clock.pass(5);
  expect(await hall.station.callNext({ test: "agility" })).toEqual({ athleteId: hall.idOf(1) });
});

test("whoever still goes, or was put into a lane and has not begun, is held", async () => {
  const hall = await leftBehind(3);
  hall.clock.pass(6);
  // Bib 4 still holds its lane; 5 and 6 wait for the push-ups.
  expect(await next(hall, "push-up")).toEqual([5, 6]);
  await hall.heat.gather({ test: "agility", heatId: randomUUID(), lanes: 2, by });
  expect(await next(hall, "agility")).toEqual([3]);
  const taken = hall.heat.place({ test: "vertical", heatId: randomUUID(), lanes: 2, by, who: { bib: "1" } });
  expect(await refusalOf(taken)).toMatchObject({ key: "heat.elsewhere" });
});

test("a heat that nobody ended still offers every lane's own result to correct", async () => {
  const hall = await leftBehind(4);
  hall.clock.pass(6);
  await hall.heat.gather({ test: "agility", heatId: randomUUID(), lanes: 4, by });
  const { lane, allDone } = liveOf(await hall.heat.view({ test: "push-up" }));
  expect(allDone).toBe(true);
  expect(lane.map(({ who, entered }) => [who.bib, entered[0]?.attempt.void])).toEqual(
    [1, 2, 3, 4].map((bib) => [bib, null]),
  );
  // The old heat gives way to the next by itself.
  expect(
    (await hall.heat.gather({ test: "push-up", heatId: randomUUID(), lanes: 4, by })).placed,
  ).toHaveLength(2);
});

test("somebody whose only result was cancelled is run again, though the old heat was never ended", async () => {
  const hall = await leftBehind(4);
  const [first] = liveOf(await hall.heat.view({ test: "push-up" })).lane;
  await hall.station.void({
    attemptId: first?.entered[0]?.attempt.attemptId ?? "",
    reason: "wrong lane",
    by,
  });
  expect(await next(hall, "push-up")).toEqual([1, 5, 6]);
  const again = { test: "push-up" as const, heatId: randomUUID(), lanes: 4, by, who: { bib: "1" } };
  expect(await hall.heat.place(again)).toMatchObject({ lane: 1, heatId: again.heatId });
});

test("in one heat at its own pace nobody gets a second lane", async () => {
  const hall = await hallAt("vertical");
  const heatId = await startedHeat(hall, "vertical", 2);
  const events = [
    sent(1, "reach", 1, { length: cm(210) }),
    sent(1, "touch", 2, { length: cm(250) }),
    sent(1, "enough", 3),
  ];
  await hall.heat.tap({ heatId, by, events });
  const [lane] = liveOf(await hall.heat.view({ test: "vertical" })).lane;
  await hall.station.void({ attemptId: lane?.entered[0]?.attempt.attemptId ?? "", reason: "misread", by });
  const { placed } = await hall.heat.gather({ test: "vertical", heatId, lanes: 4, by });
  expect(placed.map(({ athleteId }) => athleteId)).toEqual([3, 4].map(hall.idOf));
});

test("the queue says how many wait behind those it names", async () => {
  const hall = await leftBehind(3);
  expect(await hall.heat.view({ test: "agility" })).toMatchObject({ waiting: 3 });
  expect(await hall.heat.view({ test: "push-up" })).toMatchObject({ waiting: 2 });
});
