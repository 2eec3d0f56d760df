import { randomUUID } from "node:crypto";
import { expect, test } from "vitest";
import { refusalOf } from "./desk.ts";
import { bringTo, entry, reps, type StationDay, setState, stationDay } from "./station-day.ts";

/** How long "call the next" says that all rest, in minutes; 0 when somebody is called. */
async function restTold(day: StationDay): Promise<number> {
  const called = day.station.callNext({ test: "agility" });
  const refused = await called.then(
    () => null,
    () => refusalOf(called),
  );
  if (refused === null) return 0;
  expect(refused.key).toBe("station.allRest");
  return (refused.values as { count: number }).count;
}

const hour = 3_600_000;
const set = (day: StationDay, ms: number) => {
  day.clock.at = new Date(day.clock.at.getTime() + ms);
};

/** The wall clock is set between two push-ups; the rest is five minutes. */
test.each([
  ["a year ahead and right again", 365 * 24 * hour, -365 * 24 * hour],
  ["two hours back", 0, -2 * hour],
  ["a minute back", 0, -60_000],
  ["two hours back and right again", -2 * hour, 2 * hour],
  ["a year ahead", 0, 365 * 24 * hour],
])("with a clock set %s nobody is told to rest for longer than the rest", async (_how, before, after) => {
  const day = await stationDay();
  set(day, before);
  await bringTo(day, 1, "agility");
  set(day, after);
  expect(await restTold(day)).toBeLessThanOrEqual(5);
  const { queue } = await day.station.view({ test: "agility" });
  const ready = Date.parse(queue[0]?.readyAt ?? "");
  expect(ready).toBeLessThanOrEqual(day.clock.at.getTime() + 5 * 60_000);
  const { readyAt } = await day.station.find({ test: "agility", bib: "1" });
  expect(Date.parse(readyAt)).toBeLessThanOrEqual(day.clock.at.getTime() + 5 * 60_000);
  day.clock.pass(5);
  expect(
    (await day.as("station").heat.gather({ test: "agility", heatId: randomUUID(), lanes: 1, by: "QA" }))
      .placed,
  ).toHaveLength(1);
});

test("where the clock was set back, what is entered later tells when the rest before it began", async () => {
  const day = await stationDay();
  await bringTo(day, 1, "agility");
  set(day, -2 * hour);
  await day.station.enter(entry(day.idOf(2), "push-up", reps(20), { sure: true }));
  day.clock.pass(4);
  // Asked for the first time now, bib 1 has rested for four minutes all the same.
  expect(await restTold(day)).toBe(1);
  day.clock.pass(1);
  expect(await day.station.callNext({ test: "agility" })).toEqual({ athleteId: day.idOf(1) });
});

test("whoever checked in by a clock that was ahead is called at once", async () => {
  const day = await stationDay();
  set(day, 24 * hour);
  for (const bib of [1, 2, 3, 4, 5, 6]) setState(day, day.dayId, day.idOf(bib), "withdrawn", bib);
  setState(day, day.dayId, day.idOf(3), "testing", 3);
  set(day, -24 * hour);
  expect(await day.station.callNext({ test: "push-up" })).toEqual({ athleteId: day.idOf(3) });
});
