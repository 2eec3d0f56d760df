import { randomUUID } from "node:crypto";
import { setTimeout as wait } from "node:timers/promises";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { requireOpenDay } from "../../electron/api/door/at-hand.ts";
import { momentOf } from "../../electron/api/plan/moment.ts";
import { usualSettings } from "../../electron/domain/plan/settings.ts";
import { testCodes } from "../../electron/domain/tests/registry.ts";
import { createCalculator } from "../../electron/host/calculator.ts";
import { type TestDesk, testClock, testDesk } from "./desk.ts";
import { addPeople, answersOf } from "./people-of-a-day.ts";

let made: TestDesk;
let dayId = 0;
let ids: number[] = [];
const organiser = () => made.as("organiser");
const now = () => made.clock.at.toISOString();

/** A hall that begins when the test's clock says nine, with ten of whom two are only expected. */
beforeEach(async () => {
  made = testDesk(":memory:", testClock(), { calculator: createCalculator() });
  ({ dayId } = await organiser().day.create({ date: "2026-11-14", title: "Autumn" }));
  ids = addPeople(
    made,
    Array.from({ length: 10 }, (_, index) => ({ league: "North Quay", name: `Nora ${index}` })),
    dayId,
  );
});
afterEach(() => {
  made.desk.close();
  expect(made.faults).toEqual([]);
});

const begins = () => `${String(made.clock.at.getHours()).padStart(2, "0")}:00`;

async function open(): Promise<void> {
  await organiser().day.open();
  for (const athleteId of ids.slice(0, 8)) await organiser().checkIn.admit(answersOf(athleteId));
}

async function plank(athleteId: number, paper?: { at: string | null }): Promise<void> {
  await organiser().station.enter({
    ...{ athleteId, test: "core", by: "QA", note: "", sure: true, lengths: "cm" },
    attempts: [{ id: randomUUID(), seen: { held: 60_000 } }],
    ...(paper && { paper }),
  });
}

/** Waits for the next announcement of the topic. */
function announced(): Promise<void> {
  return new Promise((resolve) => {
    const stop = made.desk.news.listen(({ topics }) => {
      if (!topics.includes("forecast")) return;
      stop();
      resolve();
    });
  });
}

async function newForecast() {
  const heard = announced();
  await organiser().day.forecast();
  await heard;
  return organiser().day.forecast();
}

describe("the forecast of a day", () => {
  test("is none before the day is open, on its way at first, and then a span after now with its reason", async () => {
    expect(await organiser().day.forecast()).toBeNull();
    await open();
    const heard = announced();
    expect(await organiser().day.forecast()).toMatchObject({ state: "working", end: null });
    await heard;
    const told = await organiser().day.forecast();
    expect(told).toMatchObject({ state: "told", at: now(), planned: null });
    const { from = "", middle = "", until = "" } = told?.end ?? {};
    expect([now(), from, middle, until].toSorted()).toEqual([now(), from, middle, until]);
    expect(from > now()).toBe(true);
    expect(testCodes).toContain(told?.holdsUp);
  });

  test("is made anew after a change, and where nothing changed, once it is half a minute old", async () => {
    await open();
    await newForecast();
    let heard = 0;
    made.desk.news.listen(({ topics }) => {
      if (topics.includes("forecast")) heard += 1;
    });
    await organiser().day.forecast();
    await wait(500);
    expect(heard).toBe(0);
    made.clock.tick(5_000);
    await plank(ids[0] ?? 0);
    expect((await newForecast())?.at).toBe(now());
    made.clock.tick(31_000);
    expect((await newForecast())?.at).toBe(now());
  });

  test("goes with what is left: whoever withdraws or skips ends the day earlier, and with nobody left there is none", async () => {
    await open();
    const before = (await newForecast())?.end?.middle ?? "";
    for (const athleteId of ids.slice(2, 8)) await organiser().checkIn.withdraw({ athleteId });
    for (const athleteId of ids.slice(8)) await organiser().checkIn.noShow({ athleteId });
    const after = (await newForecast())?.end?.middle ?? "";
    expect(after < before).toBe(true);
    for (const athleteId of ids.slice(0, 2)) await organiser().checkIn.withdraw({ athleteId });
    expect(await newForecast()).toMatchObject({ state: "none", end: null });
  });

  test("stands beside what was planned", async () => {
    await organiser().plan.save({ dayId, settings: { ...usualSettings(), begins: begins() } });
    await organiser().plan.work({ kind: "plan" });
    while ((await organiser().plan.progress()).plan?.state === "running") await wait(20);
    const planned = (await organiser().plan.settings()).told?.end.middle ?? 0;
    await open();
    const told = await newForecast();
    const hour = new Date(made.clock.at);
    hour.setMinutes(0, 0, 0);
    expect(told?.planned?.middle).toBe(new Date(hour.getTime() + planned * 1000).toISOString());
  });

  test("is the same again for the same day and moment", async () => {
    await open();
    const one = await newForecast();
    made.desk.store.write(["calls"], () => {});
    const again = await newForecast();
    expect(again).toEqual(one);
    await plank(ids[0] ?? 0);
    expect((await newForecast())?.end).not.toEqual(one?.end);
  });
});

describe("the moment that it is made of", () => {
  const moment = () => {
    const { db } = made.desk.store;
    const settings = {
      ...usualSettings(),
      begins: begins(),
      leagues: [{ league: "North Quay", number: null, from: begins(), until: begins(), comes: 1 }],
    };
    return momentOf(db, requireOpenDay(db), settings, now());
  };

  test("has everybody who has a test left: here, rested or not, or expected with their window", async () => {
    await open();
    made.clock.pass(10);
    const [one = 0, two = 0, three = 0, four = 0] = ids;
    await plank(one);
    await plank(two, { at: null });
    await organiser().checkIn.withdraw({ athleteId: three });
    await organiser().station.skip({ athleteId: four, test: "agility", reason: "Ankle", by: "QA" });
    made.clock.pass(2);
    const { athletes } = moment();
    const of = (id: number) => athletes.find((athlete) => athlete.id === id);
    expect(athletes).toHaveLength(9);
    const left = testCodes.filter((code) => code !== "core");
    // Five minutes from the plank, of which two are over; paper without a time makes nobody rest.
    expect(of(one)).toMatchObject({ left, comes: 1, rested: 180 });
    expect(of(two)).toMatchObject({ left, rested: -720 });
    expect(of(three)).toBeUndefined();
    expect(of(four)?.left).toEqual(testCodes.filter((code) => code !== "agility"));
    expect(of(ids[9] ?? 0)).toMatchObject({ arrives: { from: -720, until: -720 }, left: [...testCodes] });
    expect(of(ids[9] ?? 0)?.comes).toBeLessThan(1);
  });

  test("has the turns whose times are known, with a correction at the time of what it corrects", async () => {
    await open();
    made.clock.pass(10);
    const [one = 0, two = 0, three = 0] = ids;
    await plank(one);
    await plank(two, { at: null });
    made.clock.pass(4);
    await plank(three);
    const { recent } = await organiser().station.view({ test: "core", lengths: "cm" });
    const slip = recent.find(({ attempt }) => attempt.who.athleteId === one);
    await organiser().station.enter({
      ...{ athleteId: one, test: "core", by: "QA", note: "", sure: true, lengths: "cm" },
      attempts: [{ id: randomUUID(), seen: { held: 61_000 } }],
      replaces: { attemptId: slip?.attempt.attemptId ?? "", reason: "Misread" },
    });
    made.clock.pass(1);
    expect(moment().done).toEqual([
      { athlete: one, test: "core", from: null, until: -300, heat: null },
      { athlete: three, test: "core", from: null, until: -60, heat: null },
    ]);
  });

  test("has those whom a call has at a station, as many as it has places and lanes", async () => {
    await open();
    for (const athleteId of ids.slice(0, 8)) {
      await organiser().station.callAthlete({ athleteId, test: "push-up" });
    }
    made.clock.pass(1);
    const lanes = usualSettings().stations[0]?.lanes ?? 0;
    expect(moment().running).toEqual([{ test: "push-up", athletes: ids.slice(0, lanes), since: -60 }]);
  });
});

describe("what earlier days tell of the stations", () => {
  test("is shown with the number of their turns, and paper without a time is not among them", async () => {
    // One after the other, so that each tells how long the place is taken.
    const stations = usualSettings().stations.map((station) => ({ ...station, lanes: 1 }));
    await organiser().plan.save({ dayId, settings: { ...usualSettings(), stations } });
    await open();
    for (const athleteId of ids.slice(0, 8)) {
      made.clock.pass(3);
      await organiser().station.enter({
        ...{ athleteId, test: "push-up", variant: "full", by: "QA", note: "", sure: true, lengths: "cm" },
        attempts: [{ id: randomUUID(), seen: { how: "tally", reps: 20, offAtEnd: 0 } }],
      });
      await plank(athleteId, { at: null });
    }
    await organiser().day.close({ dayId });
    await organiser().day.create({ date: "2026-11-15", title: "Again" });
    const told = await organiser().plan.settings();
    const [pushUp, , , core] = told.stations;
    expect(pushUp?.turn.from).toBe("earlier");
    expect(pushUp?.turn.turns).toBe(7);
    expect(core?.turn).toMatchObject({ from: "assumed", turns: 0 });
  });
});
