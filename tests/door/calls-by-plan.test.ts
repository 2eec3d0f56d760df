import { randomUUID } from "node:crypto";
import { expect, test } from "vitest";
import { type PlanSettings, usualSettings, usualStation } from "../../electron/domain/plan/settings.ts";
import { testCodes } from "../../electron/domain/tests/registry.ts";
import { by } from "./heat-hall.ts";
import { bringTo, entry, reps, type StationDay, stationDay } from "./station-day.ts";

/** Bibs 1 to 3 came first and skip all that comes after the push-up; of the others everything is ahead. */
async function dayWith(boundMinutes: number, lanes = 1): Promise<StationDay> {
  const day = await stationDay();
  for (const bib of [1, 2, 3])
    for (const test of testCodes.slice(1))
      await day.organiser.skip({ athleteId: day.idOf(bib), test, reason: "Sore", by: "QA" });
  await save(day, boundMinutes, lanes);
  return day;
}

async function save(day: StationDay, boundMinutes: number, lanes: number): Promise<void> {
  // A push-up takes two minutes and change-over none: so long is lost by each who goes before.
  const stations = testCodes.map((test) => ({
    ...{ ...usualStation(test), lanes: test === "push-up" ? lanes : 1 },
    ...{ turnSeconds: 120, changeOverSeconds: 0 },
  }));
  const settings: PlanSettings = { ...usualSettings(), stations, boundMinutes };
  await day.as("organiser").plan.save({ dayId: day.dayId, settings });
}

/** Calls and enters one after another, two minutes each; returns the bibs in the order of their calls. */
async function heldInTurn(day: StationDay): Promise<(number | undefined)[]> {
  const order: (number | undefined)[] = [];
  for (let count = 0; count < 6; count += 1) {
    const { queue } = await day.station.view({ test: "push-up" });
    const { athleteId } = await day.station.callNext({ test: "push-up" });
    // What the screen shows next is who is called.
    expect(queue[0]?.who.athleteId).toBe(athleteId);
    order.push([1, 2, 3, 4, 5, 6].find((bib) => day.idOf(bib) === athleteId));
    day.clock.pass(2);
    await day.station.enter(entry(athleteId, "push-up", reps(20)));
  }
  return order;
}

test("without a bound calls are first come, first served, whatever somebody has ahead", async () => {
  expect(await heldInTurn(await dayWith(0))).toEqual([1, 2, 3, 4, 5, 6]);
});

test("with a bound whoever has most ahead is called first, until others would lose more than it", async () => {
  expect(await heldInTurn(await dayWith(10))).toEqual([4, 5, 6, 1, 2, 3]);
  expect(await heldInTurn(await dayWith(5))).toEqual([4, 5, 1, 2, 3, 6]);
  expect(await heldInTurn(await dayWith(1))).toEqual([1, 2, 3, 4, 5, 6]);
});

test("a heat is filled by the same rule, and by hand as somebody decided", async () => {
  const day = await dayWith(5, 2);
  const { heat } = day.as("station");
  await day.station.callAthlete({ athleteId: day.idOf(3), test: "push-up" });
  const { placed } = await heat.gather({ test: "push-up", heatId: randomUUID(), lanes: 2, by });
  expect(placed.map(({ athleteId }) => athleteId)).toEqual([day.idOf(3), day.idOf(4)]);
});

test("nobody who rests is called for what they have ahead", async () => {
  const day = await stationDay();
  await save(day, 10, 1);
  for (const test of testCodes.slice(2))
    await day.organiser.skip({ athleteId: day.idOf(1), test, reason: "Sore", by: "QA" });
  await bringTo(day, 1, "agility");
  day.clock.pass(4);
  await bringTo(day, 2, "agility");
  day.clock.pass(1);
  const { station, heat } = day.as("station");
  const shown = async () => [
    (await station.view({ test: "agility" })).queue.map(({ who }) => who.bib),
    (await heat.view({ test: "agility" })).next.map(({ who }) => who.bib),
  ];
  expect(await shown()).toEqual([
    [1, 2],
    [1, 2],
  ]);
  // Nothing is entered until the rest is over: what was shown before must not stay.
  day.clock.pass(4);
  expect(await shown()).toEqual([
    [2, 1],
    [2, 1],
  ]);
  day.clock.pass(-4);
  expect(await day.station.callNext({ test: "agility" })).toEqual({ athleteId: day.idOf(1) });
});
