import { expect, test } from "vitest";
import { addPeople } from "./people-of-a-day.ts";
import { entry, past, pastOf, reps, type StationDay, stationDay } from "./station-day.ts";

/** Athletes who gained six push-ups from their first test to their second, more or less. */
function whoLearnt(day: StationDay, count: number, from = 0): void {
  const people = Array.from({ length: count }, (_, at) => ({
    league: "Quarry Lane",
    name: `Skater ${from + at}`,
  }));
  for (const [at, id] of addPeople(day, people, null).entries()) {
    pastOf(day, id, "push-up", 20 + at, "2026-01-10", "full");
    pastOf(day, id, "push-up", 26 + at + (at % 3) - 1, "2026-05-09", "full");
  }
}

async function toldOf(day: StationDay, bib: number) {
  const { marks } = await day.as("organiser").people.get({ athleteId: day.idOf(bib) });
  return marks[0];
}

async function pushUps(day: StationDay) {
  const { tests } = await day.as("organiser").noise.get();
  return tests[0];
}

test("a hall without others who came again says what it assumes of learning and of days", async () => {
  const day = await stationDay();
  // √0.08 of 2 reps.
  expect(await pushUps(day)).toMatchObject({
    learning: [],
    hall: { used: { number: "0.6", unit: "reps" }, days: 0 },
  });
});

test("what eight others gained by knowing the test is taken off a second one, and the card says so", async () => {
  const day = await stationDay();
  past(day, 1, "push-up", 20, "2026-06-01", "full");
  await day.station.enter(entry(day.idOf(1), "push-up", reps(27), { sure: true }));
  whoLearnt(day, 7);
  expect(await toldOf(day, 1)).toMatchObject({ news: { verdict: "clear gain" }, beside: [] });
  whoLearnt(day, 1, 7);
  expect(await toldOf(day, 1)).toMatchObject({
    news: { change: 7, verdict: "likely gain" },
    beside: [{ key: "marks.learnt" }],
  });
  const [step, ...more] = (await pushUps(day))?.learning ?? [];
  expect(more).toEqual([]);
  // The page tells what today's results are judged by: today's own second test comes in when the day is closed.
  expect(step).toMatchObject({ from: 1, athletes: 8, by: { unit: "reps" } });
  expect(Number(step?.low.number)).toBeGreaterThan(0);
});

test("a third test has nothing of it: both before had it, or the level says how much", async () => {
  const day = await stationDay();
  whoLearnt(day, 8);
  for (const [date, value] of [
    ["2025-01-10", 20],
    ["2025-05-10", 26],
    ["2025-09-10", 26],
    ["2026-01-10", 26],
    ["2026-05-10", 26],
  ] as const)
    past(day, 1, "push-up", value, date, "full");
  await day.station.enter(entry(day.idOf(1), "push-up", reps(34), { sure: true }));
  expect(await toldOf(day, 1)).toMatchObject({ news: { verdict: "clear gain" }, beside: [] });
});

test("the summary tells in which test everybody moved together, and no other", async () => {
  const day = await stationDay();
  const people = Array.from({ length: 12 }, (_, at) => ({ league: "Quarry Lane", name: `Mover ${at}` }));
  const ids = addPeople(day, people, day.dayId);
  const organiser = day.as("organiser");
  for (const [at, id] of ids.entries()) {
    await organiser.checkIn.admit({
      ...{
        athleteId: id,
        bib: null,
        leaveOut: [],
        board: "bib",
        share: false,
        guardianConsent: false,
        by: "QA",
      },
    });
    pastOf(day, id, "push-up", 20 + at, "2026-05-09", "full");
    pastOf(day, id, "core", 100 + at, "2026-05-09");
    await day.station.enter(entry(id, "push-up", reps(22 + at + (at % 3)), { sure: true }));
    await day.station.enter(
      entry(id, "core", { held: 1000 * (100 + at + (at % 2 === 0 ? 5 : -5)) }, { sure: true }),
    );
  }
  const told = await organiser.summary.get({});
  // The mean of 2, 3 and 4, four times each, with the SD 0.8528: 3 ± 2.201 · 0.8528 / √12.
  expect(told?.together).toEqual([{ test: "push-up", by: 3, low: 2.5, high: 3.5, athletes: 12 }]);
});
