import { randomUUID } from "node:crypto";
import { expect, test } from "vitest";
import { boardDay } from "./board-day.ts";
import { crowd } from "./crowd.ts";
import { by, type Hall, hallAt, liveOf, sent, startedHeat } from "./heat-hall.ts";
import { entry, hold, past, reps, trial } from "./station-day.ts";

const hidden = { league: "Foundry Town", name: "Cinder Rue", board: "hidden" } as const;

test("on a first day first results are news and counted, newest first, and nobody hidden is among them", async () => {
  const day = await boardDay([
    { league: "Foundry Town", name: "Ash Velvet", board: "name" },
    { league: "Foundry Town", name: "Briar Knox", board: "bib" },
    hidden,
  ]);
  await day.enter(1, "push-up", reps(31));
  await day.enter(2, "push-up", reps(12));
  await day.enter(3, "push-up", reps(40));
  await day.enter(1, "agility", trial("cw", 7, 0));
  const view = await day.view();
  expect(view.firsts.map(({ label, test: code, written }) => [label, code, written.number])).toEqual([
    [{ as: "bib", bib: 2 }, "push-up", "12"],
    [{ as: "name", name: "Ash Velvet" }, "push-up", "31"],
  ]);
  expect(view.newest).toEqual([]);
  // The jumps in one direction are no result yet.
  expect(view.totals).toEqual({ bests: 0, bestsByChance: 0, firsts: 2, testsDone: 2, athletesTested: 2 });
});

test("beside leagues with a past, a new league's first results are counted as news of their own", async () => {
  const day = await boardDay([
    { league: "Foundry Town", name: "Ash Velvet", board: "name" },
    { league: "Quarry Lane", name: "Fern Pike", board: "name" },
  ]);
  day.past(1, "push-up", 20);
  await day.enter(1, "push-up", reps(23));
  await day.enter(2, "push-up", reps(9));
  const { newest, firsts, totals } = await day.view();
  expect([newest.length, firsts.length]).toEqual([1, 1]);
  expect(totals).toMatchObject({ bests: 1, firsts: 1 });
});

test("a closed day stays on the wall until midnight whatever its own date, also while the next one is planned", async () => {
  const day = await boardDay([{ league: "Foundry Town", name: "Ash Velvet", board: "name" }]);
  await day.enter(1, "push-up", reps(23));
  // The day has the date of 14 November; it went on past midnight and was closed on the 15th.
  day.clock.at = new Date("2026-11-15T09:00:00Z");
  await day.as("organiser").day.close({ dayId: day.dayId });
  expect((await day.view()).day?.state).toBe("closed");
  await day.as("organiser").day.create({ date: "2027-02-06", title: "Winter", sure: true });
  const view = await day.view();
  expect([view.day?.state, view.totals.firsts]).toEqual(["closed", 1]);
  day.clock.at = new Date("2026-11-16T09:00:00Z");
  expect((await day.view()).day).toMatchObject({ title: "Winter", state: "planned" });
});

/** Everybody agrees to be shown by name, and bib 1 held 3:20 in spring. */
async function hallOnTheWall(): Promise<Hall> {
  const hall = await hallAt("core");
  for (const bib of [1, 2, 3, 4, 5, 6])
    await hall.as("check-in").people.setConsent({ athleteId: hall.idOf(bib), board: "name", share: false });
  past(hall, 1, "core", 100, "2026-05-02");
  return hall;
}

/** What the wall says of planks: names of bests and firsts, and how many bests are counted. */
async function planks(hall: Hall) {
  const { newest, firsts, totals, walls } = await hall.as("board").board.view();
  const isPlank = ({ test: code }: { test: string }) => code === "core";
  return {
    news: [...newest, ...firsts].filter(isPlank).length,
    rows: walls.find(isPlank)?.rows.length,
    bests: totals.bests,
  };
}

/** Bib 1 is stopped after 16 minutes, which nobody does who held 1:40 in spring. */
async function doubtfulPlank(hall: Hall): Promise<{ heatId: string; attemptId: string }> {
  const heatId = await startedHeat(hall, "core", 2);
  hall.clock.tick(970_000);
  await hall.heat.tap({ heatId, by, events: [sent(1, "stop", 960_000)] });
  const [lane] = liveOf(await hall.heat.view({ test: "core" })).lane;
  expect(lane?.doubts).not.toEqual([]);
  return { heatId, attemptId: lane?.entered[0]?.attempt.attemptId ?? "" };
}

test("a doubtful live result is not on the big screen before somebody has said that it is right", async () => {
  const hall = await hallOnTheWall();
  const { attemptId } = await doubtfulPlank(hall);
  expect(await planks(hall)).toEqual({ news: 0, rows: 0, bests: 0 });
  const needs = async () =>
    (await hall.as("organiser").day.overview()).needs.map(({ sentence }) => sentence.key);
  expect(await needs()).toContain("overview.doubt");
  const [recent] = (await hall.station.view({ test: "core" })).recent;
  expect(recent?.doubts).not.toEqual([]);
  const answer = { attemptId, id: randomUUID(), by };
  await hall.heat.confirm(answer);
  await hall.heat.confirm(answer);
  expect(await planks(hall)).toEqual({ news: 1, rows: 1, bests: 1 });
  expect(await needs()).not.toContain("overview.doubt");
  const [lane] = liveOf(await hall.heat.view({ test: "core" })).lane;
  expect(lane?.doubts).toEqual([]);
  expect((await hall.station.view({ test: "core" })).recent[0]?.doubts).toEqual([]);
});

test("doubtful results are needs by name, and a number where one test has many, as other needs are", async () => {
  const hall = await hallOnTheWall();
  const needs = async () =>
    (await hall.as("organiser").day.overview()).needs.filter(({ sentence: { key } }) =>
      key.startsWith("overview.doubt"),
    );
  const heatId = await startedHeat(hall, "core", 4);
  hall.clock.tick(970_000);
  const stop = (lane: number) => hall.heat.tap({ heatId, by, events: [sent(lane, "stop", 960_000 + lane)] });
  for (const lane of [1, 2, 3]) await stop(lane);
  const [first, ...others] = await needs();
  expect(first).toEqual({
    sentence: { key: "overview.doubt", values: { name: "Ada Rill", bib: 1 } },
    to: "/station/core",
  });
  expect(others).toHaveLength(2);
  await stop(4);
  expect(await needs()).toEqual([
    { sentence: { key: "overview.doubts", values: { count: 4, test: "core" } }, to: "/station/core" },
  ]);
});

test("a doubt outlives its heat, and can be answered afterwards", async () => {
  const hall = await hallOnTheWall();
  const { heatId, attemptId } = await doubtfulPlank(hall);
  await hall.heat.end({ heatId, by, setAside: true });
  expect((await planks(hall)).rows).toBe(0);
  await hall.heat.confirm({ attemptId, id: randomUUID(), by });
  expect((await planks(hall)).rows).toBe(1);
});

test("a corrected doubtful result goes on the big screen as it was corrected", async () => {
  const hall = await hallOnTheWall();
  const { attemptId } = await doubtfulPlank(hall);
  const replaces = { attemptId, reason: "wrong lane" };
  await hall.station.enter(entry(hall.idOf(1), "core", hold(106), { replaces, sure: true }));
  expect(await planks(hall)).toEqual({ news: 1, rows: 1, bests: 1 });
});

test("what no heat entered has nothing to confirm, and no window taps an answer", async () => {
  const hall = await hallOnTheWall();
  await expect(hall.heat.confirm({ attemptId: "none", id: randomUUID(), by })).rejects.toThrow();
  const { heatId } = await doubtfulPlank(hall);
  const tap = sent(1, "sure", 1000, { attemptIds: [] });
  await expect(hall.heat.tap({ heatId, by, events: [tap] })).rejects.toMatchObject({
    cause: { sentence: { key: "heat.badTap" } },
  });
});

test("a screen is sent the rows of a wall that it has room for, going on where it stopped", async () => {
  const day = await boardDay(crowd(9).map((person) => ({ ...person, board: "bib" as const })));
  for (let bib = 1; bib <= 9; bib += 1) await day.enter(bib, "push-up", reps(20 + bib));
  const wallAt = async (round: number) => {
    const { walls } = await day.as("board").board.view({ wall: { rows: 4, round } });
    const [wall] = walls;
    return { ...wall, rows: wall?.rows.map(({ label }) => label) };
  };
  const all = (await day.view()).walls[0]?.rows.map(({ label }) => label) ?? [];
  expect(all).toHaveLength(9);
  const parts = await Promise.all([0, 1, 2].map(wallAt));
  expect(parts.map(({ part, parts: of }) => `${part} of ${of}`)).toEqual(["1 of 3", "2 of 3", "3 of 3"]);
  expect(parts.flatMap(({ rows }) => rows)).toEqual(all);
  expect(await wallAt(3)).toEqual(parts[0]);
  day.desk.close();
});
