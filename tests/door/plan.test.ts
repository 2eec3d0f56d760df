import { setTimeout as wait } from "node:timers/promises";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { usualSettings } from "../../electron/domain/plan/settings.ts";
import { testCodes } from "../../electron/domain/tests/registry.ts";
import { createCalculator } from "../../electron/host/calculator.ts";
import { planOfDay } from "../../electron/store/tables/day-plans.ts";
import { refusalOf, type TestDesk, testClock, testDesk } from "./desk.ts";
import { addPeople } from "./people-of-a-day.ts";

let made: TestDesk;
let dayId = 0;
const organiser = () => made.as("organiser");
const plan = () => organiser().plan;

beforeEach(async () => {
  made = testDesk(":memory:", testClock(), { calculator: createCalculator() });
  ({ dayId } = await organiser().day.create({ date: "2026-11-14", title: "Autumn" }));
});
afterEach(() => {
  made.desk.close();
  expect(made.faults).toEqual([]);
});

const quay = { league: "North Quay", number: null, from: "09:45", until: "10:15", comes: 1 };
const settings = { ...usualSettings(), begins: "10:00", leagues: [quay] };

/** A list of so many invented athletes, half of each league. */
function list(count: number): number[] {
  const people = Array.from({ length: count }, (_, index) => ({
    league: index % 2 === 0 ? "North Quay" : "Tidewater",
    name: `Nora ${index}`,
    number: String(index),
  }));
  return addPeople(made, people, dayId);
}

/** Works a plan or its changes out to the end. */
async function workedOut(kind: "plan" | "whatIfs"): Promise<void> {
  await plan().work({ kind });
  for (;;) {
    const told = (await plan().progress())[kind];
    if (told?.state !== "running") break;
    await wait(20);
  }
  expect((await plan().progress())[kind]).toMatchObject({ state: "done", done: 1, stale: false });
}

describe("what is planned", () => {
  test("is the usual until somebody saves, with the leagues of the list and assumed times", async () => {
    list(5);
    const told = await plan().settings();
    expect(told).toMatchObject({ dayId, savedAt: null, told: null, begins: "09:00", restMinutes: 5 });
    expect(told.leagues.map(({ league, listed }) => [league, listed])).toEqual([
      ["North Quay", 3],
      ["Tidewater", 2],
    ]);
    expect(told.stations.map(({ test: code, turn }) => [code, turn.from])).toEqual(
      testCodes.map((code) => [code, "assumed"]),
    );
  });

  test("is saved with the day, and what is typed goes before what is assumed", async () => {
    const stations = settings.stations.map((station) =>
      station.test === "vertical" ? { ...station, places: 2, turnSeconds: 150 } : station,
    );
    await plan().save({ dayId, settings: { ...settings, stations, judges: 4 } });
    const told = await plan().settings();
    expect(told).toMatchObject({ begins: "10:00", judges: 4, savedAt: made.clock.at.toISOString() });
    expect(told.leagues).toEqual([{ ...quay, listed: 0 }]);
    expect(told.stations[2]).toMatchObject({ places: 2, turn: { median: 150, from: "typed" } });
  });

  test.each([
    ["plan.arrivesBackwards", { leagues: [{ ...quay, from: "10:30", until: "10:15" }] }],
    ["plan.leagueTwice", { leagues: [quay, quay] }],
    ["plan.breakBackwards", { breaks: [{ from: "12:30", until: "12:00" }] }],
    ["plan.stationTwice", { stations: [settings.stations[0], settings.stations[0]] }],
  ])("that can't be is refused with %s", async (key, wrong) => {
    const save = plan().save({ dayId, settings: { ...settings, ...wrong } as typeof settings });
    expect((await refusalOf(save)).key).toBe(key);
    expect(planOfDay(made.desk.store.db, dayId)).toBeUndefined();
  });

  test("can't be saved for a day that is closed or not there", async () => {
    await organiser().day.open();
    await organiser().day.close({ dayId });
    expect((await refusalOf(plan().save({ dayId, settings }))).key).toBe("plan.closed");
    expect((await refusalOf(plan().save({ dayId: 99, settings }))).key).toBe("day.none");
  });
});

describe("a plan that is worked out", () => {
  test("is for nobody refused, also from a desk without threads", async () => {
    expect((await refusalOf(plan().work({ kind: "plan" }))).key).toBe("plan.nobody");
    const bare = testDesk();
    await bare.as("organiser").day.create({ date: "2026-11-14", title: "Autumn" });
    const work = bare.as("organiser").plan.work({ kind: "plan" });
    expect((await refusalOf(work)).key).toBe("plan.notHere");
  });

  test("tells the end, is kept with the day, and is the same again for the same day", async () => {
    const heard: string[] = [];
    made.desk.news.listen(({ topics }) => heard.push(...topics));
    list(14);
    await plan().save({ dayId, settings });
    await workedOut("plan");
    expect(heard).toContain("plan");
    const first = await plan().result();
    expect(first).toMatchObject({ stale: false, begins: new Date("2026-11-14T10:00").toISOString() });
    const end = first?.plan.end ?? { from: 0, middle: 0, until: 0 };
    expect(end.from).toBeGreaterThan(30 * 60);
    expect(end.from).toBeLessThanOrEqual(end.middle);
    expect(end.middle).toBeLessThanOrEqual(end.until);
    const kept = (await plan().settings()).told;
    expect(kept).toMatchObject({ end, athletes: 14, holdsUp: first?.plan.holdsUp, begins: "10:00" });
    // Another task in between, so that it is really worked out anew.
    await plan().save({ dayId, settings: { ...settings, judges: 2 } });
    expect([(await plan().result())?.stale, (await plan().settings()).told]).toEqual([true, null]);
    await workedOut("plan");
    expect((await plan().result())?.plan.end).not.toEqual(end);
    await plan().save({ dayId, settings });
    await workedOut("plan");
    expect((await plan().result())?.plan).toEqual(first?.plan);
  });

  test("is for as many of a league as were said, named as far as they are on the list", async () => {
    list(4);
    const league = { ...quay, number: 6 };
    await plan().save({ dayId, settings: { ...settings, leagues: [league] } });
    await workedOut("plan");
    const people = (await plan().result())?.people ?? [];
    expect(people.filter(({ league: of }) => of === "North Quay").map(({ name }) => name)).toEqual([
      "Nora 0",
      "Nora 2",
      ...["", "", "", ""],
    ]);
    expect(people).toHaveLength(8);
  });

  test("names nobody in the store", async () => {
    list(6);
    await workedOut("plan");
    const row = JSON.stringify(planOfDay(made.desk.store.db, dayId));
    expect(row).toContain('"holdsUp"');
    expect(row).not.toMatch(/Nora|athlete(?!s)/);
  });

  test("can be stopped, and goes on when it is asked for again", async () => {
    list(40);
    await plan().work({ kind: "whatIfs" });
    await plan().stop({ kind: "whatIfs" });
    await wait(1);
    expect((await plan().progress()).whatIfs).toMatchObject({ state: "stopped" });
    expect(await plan().whatIfs()).toBeNull();
    await plan().stop({ kind: "whatIfs" });
    await plan().work({ kind: "whatIfs" });
    expect((await plan().progress()).whatIfs).toMatchObject({ state: "running" });
  });

  test("tells what changes would bring, the greatest saving first", async () => {
    list(8);
    await workedOut("whatIfs");
    const told = await plan().whatIfs();
    const savings = (told?.whatIfs ?? []).map(({ saved }) => saved.middle);
    expect(savings.length).toBeGreaterThan(10);
    expect(Math.max(...savings)).toBeGreaterThan(0);
    expect(told?.whatIfs[0]?.changes.length).toBeGreaterThan(0);
  });
});

describe("times at which leagues would come", () => {
  /** The leagues' own change, where it is told. */
  async function timesTold() {
    await workedOut("whatIfs");
    const told = (await plan().whatIfs())?.whatIfs ?? [];
    return told.find(({ changes }) => changes.length === 1 && changes[0]?.kind === "waves");
  }

  test("are told as times of day, are saved as they are told, and are not told again", async () => {
    list(12);
    const tidewater = { league: "Tidewater", number: null, from: "12:00", until: "12:30", comes: 1 };
    await plan().save({ dayId, settings: { ...settings, leagues: [quay, tidewater] } });
    const told = await timesTold();
    // The second league comes two hours after the tests begin, for no reason.
    expect(told?.saved.middle).toBeGreaterThan(3600);
    const times = told?.waves?.times ?? [];
    expect(times.map(({ league }) => league).sort()).toEqual(["North Quay", "Tidewater"]);
    for (const { from, until } of times) {
      expect(from).toMatch(/^1[01]:\d[05]$/);
      expect(until).toBe(from);
    }
    expect(times[0]?.from).toBe("10:00");
    const leagues = [quay, tidewater].map((each) => ({
      ...each,
      ...times.find(({ league }) => league === each.league),
    }));
    await plan().save({ dayId, settings: { ...settings, leagues } });
    expect((await plan().settings()).leagues).toMatchObject(leagues);
    await workedOut("plan");
    const waves = (await plan().timetable())?.waves ?? [];
    const clock = (at: string) => new Date(at).toTimeString().slice(0, 5);
    expect(waves.map(({ league, at }) => [league, clock(at)])).toEqual(
      times.map(({ league, from }) => [league, from]),
    );
    expect(await timesTold()).toBeUndefined();
  });
});

describe("the timetable", () => {
  test("says for each athlete when to be there and when each test begins, and is a sheet", async () => {
    list(6);
    await plan().save({ dayId, settings });
    expect(await plan().timetable()).toBeNull();
    expect((await refusalOf(plan().sheet())).key).toBe("plan.notWorkedOut");
    await workedOut("plan");
    const told = await plan().timetable();
    expect(told?.leagues.map(({ league }) => league)).toEqual(["North Quay", "Tidewater"]);
    const ofQuay = told?.leagues[0]?.lines ?? [];
    expect(ofQuay.map(({ name }) => name).sort()).toEqual(["Nora 0", "Nora 2", "Nora 4"]);
    for (const { at, starts } of ofQuay) {
      expect(starts.map((start) => start.test)).toEqual([...testCodes]);
      const times = [at, ...starts.map((start) => start.at)];
      expect(times.toSorted()).toEqual(times);
    }
    const { name, text } = await plan().sheet();
    expect(name).toBe("tapeline-timetable-2026-11-14.csv");
    const lines = text.trimEnd().split("\r\n");
    expect(lines[0]).toBe("\uFEFFleague,number,name,bib,arrive,push-up,agility,vertical,core,endurance");
    expect(lines).toHaveLength(1 + (told?.leagues ?? []).flatMap((league) => league.lines).length);
    expect(lines[1]).toMatch(/^North Quay,\d,Nora \d,,\d\d:\d\d(?:,\d\d:\d\d){5}$/);
  });

  test("leaves nobody out of whom only half are likely to come: they are told when to be there", async () => {
    list(20);
    const half = { number: null, from: "10:00", until: "10:00", comes: 0.5 };
    const leagues = ["North Quay", "Tidewater"].map((league) => ({ league, ...half }));
    await plan().save({ dayId, settings: { ...settings, leagues } });
    await workedOut("plan");
    const lines = (await plan().timetable())?.leagues.flatMap((league) => league.lines) ?? [];
    expect(lines).toHaveLength(20);
    const { text } = await plan().sheet();
    const without = lines.filter(({ starts }) => starts.length === 0);
    expect(without.length).toBeGreaterThan(0);
    for (const { name } of without) expect(text).toContain(`,${name},,10:00,,,,,\r\n`);
  });
});
