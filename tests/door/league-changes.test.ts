import { expect, test } from "vitest";
import { addPeople } from "./people-of-a-day.ts";
import { pastOf, reps, setState } from "./station-day.ts";
import { emptyDay, foundry, key, quarry, rowsOfSheet, type WorkedDay, workedDay } from "./summary-day.ts";

const apple = "Apple Row";

/**
 * A day on which eight of a new league and eight of Foundry Town did push-ups after 20 in April: these gained 1 to 8, and
 * those lost or gained up to 3.
 */
async function twoLeagues(): Promise<WorkedDay> {
  const day = await emptyDay();
  await push(day, apple, [1, 2, 3, 4, 5, 6, 7, 8]);
  await push(day, foundry, [-3, -2, -1, 0, 0, 1, 2, 3]);
  return day;
}

async function push(day: WorkedDay, league: string, changes: readonly number[]): Promise<void> {
  const people = changes.map((_each, at) => ({ league, name: `${league} ${"abcdefgh"[at]}` }));
  const ids = addPeople(day, people, day.dayId);
  const from = day.as("organiser");
  for (const [at, change] of changes.entries()) {
    const athleteId = ids[at] ?? 0;
    setState(day, day.dayId, athleteId, "testing", 100 + athleteId);
    pastOf(day, athleteId, "push-up", 20, "2026-04-11", "full");
    await key({ ...day, station: from.station, idOf: () => athleteId }, 0, "push-up", [reps(20 + change)]);
  }
}

async function changesOf(day: WorkedDay, leagueId: number | null = null) {
  return (await day.summary.get({ dayId: day.dayId, leagueId }))?.changes ?? [];
}

test("leagues of the day with their changes, each beside the other", async () => {
  const day = await twoLeagues();
  const changes = await changesOf(day);
  expect(changes.map(({ league, test: code, pairs }) => [league, code, pairs])).toEqual([
    [apple, "push-up", 8],
    [foundry, "push-up", 8],
  ]);
  const [own, others] = changes;
  // Mean 4.5, of variance 6 / 8 = 0.75, and two days of at most half a typical error of 2.1 each: √(0.75 + 2 · 0.25 · 2.1²) is
  // 1.718, and t of 108 degrees 1.982.
  expect(own?.found?.mean.amount).toBe(4.5);
  expect(own?.found?.mean.low).toBeCloseTo(4.5 - 1.982 * 1.718, 2);
  expect(own?.found).toMatchObject({ holds: true, others: { amount: 4.5, pairs: 8 } });
  expect(others?.found).toMatchObject({ holds: false, mean: { amount: 0 }, others: { amount: -4.5 } });
  expect(day.faults).toEqual([]);
});

test("a league's own summary has its change, the same as on the whole day's, and no other league's", async () => {
  const day = await twoLeagues();
  const leagueId = (await day.summary.get({}))?.leagues.find(({ name }) => name === apple)?.id ?? 0;
  const own = await changesOf(day, leagueId);
  expect(own).toEqual((await changesOf(day)).filter(({ league }) => league === apple));
  expect(own).toHaveLength(1);
});

test("the sheet has what is said, of the league and of no athlete", async () => {
  const day = await twoLeagues();
  const { text } = await day.summary.sheet({ name: "league_changes.csv" });
  const [own] = rowsOfSheet(text);
  expect(own).toMatchObject({
    ...{ league: apple, test: "push-up", variant: "full", athletes: "8", first_results: "0", unit: "reps" },
    ...{ mean_change: "4.5", mean_change_low: "1.09302", mean_change_high: "7.90698" },
    ...{ known_test: "0" },
    ...{ more_than_chance: "yes", true_spread: "0", true_spread_low: "0", typical_error_assumed: "yes" },
    ...{
      clear_gains: "2",
      clear_losses: "0",
      clear_losses_by_chance: "0.016",
      others: "8",
      less_others: "4.5",
    },
  });
  expect(text).not.toMatch(/Apple Row a|Foundry Town b/);
});

test("of few athletes it is only said how many they are, and why", async () => {
  const day = await workedDay();
  expect(await changesOf(day)).toEqual([
    few(foundry, "push-up", { variant: "full", pairs: 3 }),
    few(foundry, "agility", { firsts: 1 }),
    // One trial, and nobody knows the best of how many it was before.
    few(foundry, "vertical", { unlike: 1 }),
    few(foundry, "core", { firsts: 2 }),
    // Cy stopped.
    few(foundry, "endurance", { pairs: 1, unfinished: 1 }),
    few(quarry, "push-up", { variant: "full", firsts: 2 }),
  ]);
  const rows = rowsOfSheet((await day.summary.sheet({ name: "league_changes.csv" })).text);
  expect(
    rows.map(({ athletes, not_finished, mean_change }) => [athletes, not_finished, mean_change]),
  ).toEqual([
    ["3", "0", ""],
    ["0", "0", ""],
    ["0", "0", ""],
    ["0", "0", ""],
    ["1", "1", ""],
    ["0", "0", ""],
  ]);
});

function few(league: string, code: string, differing: object) {
  const none = { pairs: 0, firsts: 0, unlike: 0, unfinished: 0, found: null };
  return { league, test: code, variant: "", ...none, ...differing };
}

test("of a circuit the sheet has a shorter time below zero, as the other sheets do", async () => {
  const day = await emptyDay();
  const ids = addPeople(
    day,
    [..."abcdefgh"].map((letter) => ({ league: apple, name: `Skater ${letter}` })),
    day.dayId,
  );
  const organiser = day.as("organiser").station;
  for (const [at, athleteId] of ids.entries()) {
    setState(day, day.dayId, athleteId, "testing", 100 + at);
    pastOf(day, athleteId, "endurance", 400_000, "2026-04-11");
    const seen = { finished: true, time: 400_000 - 1000 * (at + 1) };
    await key({ ...day, station: organiser, idOf: () => athleteId }, 0, "endurance", [seen]);
  }
  expect((await changesOf(day))[0]?.found?.mean.amount).toBe(4500);
  const [row] = rowsOfSheet((await day.summary.sheet({ name: "league_changes.csv" })).text);
  expect(row).toMatchObject({
    ...{ test: "endurance", unit: "s", mean_change: "-4.5" },
    ...{ mean_change_low: "-21.08362", mean_change_high: "12.08362", known_test: "0" },
  });
});
