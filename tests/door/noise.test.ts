import { expect, test } from "vitest";
import { typicalErrorsOf } from "../../electron/api/noise/errors.ts";
import { noiseOf as noiseOfStore } from "../../electron/api/noise/known.ts";
import { studyResult } from "../../electron/domain/study/result.ts";
import type { TestCode } from "../../electron/domain/tests/registry.ts";
import { attemptsOfDay } from "../../electron/store/tables/attempts.ts";
import { setDayState } from "../../electron/store/tables/days.ts";
import { recordAttempt, voidAttempt } from "../../electron/store/tables/record.ts";
import { refusalOf } from "./desk.ts";
import { addPeople } from "./people-of-a-day.ts";
import {
  bringTo,
  entry,
  hold,
  jump,
  past,
  pastOf,
  reps,
  type StationDay,
  setState,
  stationDay,
  ticket,
} from "./station-day.ts";

/** What the organiser is told of one test while the day would be over; it goes on after it. */
async function noiseOf(day: StationDay, test: TestCode) {
  const setTo = (state: "open" | "closed") =>
    day.desk.store.write([], (db) => setDayState(db, day.dayId, state));
  setTo("closed");
  const { tests } = await day.as("organiser").noise.get();
  setTo("open");
  const found = tests.find((each) => each.test === test);
  if (found === undefined) throw new Error(`nothing is said of ${test}`);
  return found;
}

async function pushUps(day: StationDay, bib: number, count: number): Promise<void> {
  await day.station.enter(entry(day.idOf(bib), "push-up", reps(count), { sure: true }));
}

test("a store without pairs says that it assumes, and from where", async () => {
  const day = await stationDay();
  const { tests } = await day.as("station").noise.get();
  expect(
    tests.map(({ test, assumed, pairs, used, source }) => [test, assumed, pairs, used, source.key]),
  ).toEqual([
    ["push-up", true, 0, { number: "2", unit: "reps" }, "test.push-up.noiseSource"],
    ["agility", true, 0, { number: "1", unit: "landings" }, "test.agility.noiseSource"],
    ["vertical", true, 0, { number: "1.6", unit: "cm" }, "test.vertical.noiseSource"],
    ["core", true, 0, { number: "7.2", unit: "s" }, "test.core.noiseSource"],
    ["endurance", true, 0, { number: "10.8", unit: "s" }, "test.endurance.noiseSource"],
  ]);
  // From 20 reps, 23 is likely a gain and 27 a clear one: 7 reps, the one figure that is told of what is clear.
  expect(tests[0]).toMatchObject({
    typical: { value: 20, date: null, marks: 0 },
    likelyFrom: { number: "23" },
    clearFrom: { number: "27" },
    clearBy: { number: "7", unit: "reps" },
    ...{ own: null, trials: null, worthwhile: null, icc: null },
  });
});

test("the board asks in vain", async () => {
  const day = await stationDay();
  expect(await refusalOf(day.as("board").noise.get())).toEqual({ key: "door.forbidden" });
});

/** The fixed part of the typical error from all days, in reps. */
const fixedIn = (day: StationDay) => typicalErrorsOf(day.desk.store.db, 0)["push-up"].fixed;

// The five pairs of Hopkins 2000, Sports Medicine 30(1), in units of √(1.5² + (0.066 · mean)²): 0.57622 of it with four
// degrees, √((2 + 4 · 0.57622²) / 6) = 0.74477 with the start, which is 4.6695 at 67 (numpy, χ² of scipy).
test("pairs within 14 days come in when their day is over, and change what is told", async () => {
  const day = await stationDay();
  const before = [62, 78, 81, 55, 66];
  const after = [67, 76, 87, 55, 63];
  before.forEach((count, index) => {
    past(day, index + 1, "push-up", count, "2026-11-01", "full");
  });
  await pushUps(day, 1, 67);
  // One difference has no spread.
  expect(await noiseOf(day, "push-up")).toMatchObject({ assumed: true, pairs: 0, own: null });
  for (const [index, count] of after.entries()) if (index > 0) await pushUps(day, index + 1, count);
  const told = await noiseOf(day, "push-up");
  expect(told).toMatchObject({
    ...{ assumed: false, pairs: 5, degrees: 6, starting: { number: "4.7", unit: "reps" } },
    own: {
      used: { number: "2.7", unit: "reps" },
      low: { number: "1.6", unit: "reps" },
      high: { number: "7.7", unit: "reps" },
      degrees: 4,
    },
    used: { number: "3.5", unit: "reps" },
    typical: { value: 67, date: "2026-11-14", marks: 5 },
  });
  expect(fixedIn(day)).toBeCloseTo(1.11716, 5);
  // Until then the page tells by what the day's results are judged.
  const { tests } = await day.as("organiser").noise.get();
  expect(tests[0]).toMatchObject({ assumed: true, pairs: 0, used: { number: "4.7", unit: "reps" } });
  expect(typicalErrorsOf(day.desk.store.db, day.dayId)["push-up"].fixed).toBeCloseTo(1.5, 5);
});

test("a verdict follows the error that the other days have taught, and not that of its own day", async () => {
  const day = await stationDay();
  past(day, 6, "push-up", 20, "2026-06-01", "full");
  await pushUps(day, 6, 27);
  const verdictOf = async () =>
    (await day.as("organiser").people.get({ athleteId: day.idOf(6) })).marks[0]?.news?.verdict;
  expect(await verdictOf()).toBe("clear gain");
  const wild: [number, number][] = [
    [20, 26],
    [30, 24],
    [25, 33],
    [40, 36],
  ];
  for (const [index, [first, second]] of wild.entries()) {
    past(day, index + 1, "push-up", first, "2026-11-05", "full");
    await pushUps(day, index + 1, second);
  }
  expect(fixedIn(day)).toBeGreaterThan(2);
  expect(await verdictOf()).toBe("clear gain");
  for (const [index, [, second]] of wild.entries())
    past(day, index + 1, "push-up", second, "2026-10-30", "full");
  expect(await verdictOf()).toBe("likely gain");
});

test.each<[string, (day: StationDay, bib: number) => void]>([
  ["fifteen days apart", (day, bib) => past(day, bib, "push-up", 20, "2026-10-30", "full")],
  ["on one date", (day, bib) => past(day, bib, "push-up", 20, "2026-11-14", "full")],
  ["of another variant", (day, bib) => past(day, bib, "push-up", 20, "2026-11-07", "knee")],
])("marks %s are no pair", async (_how, before) => {
  const day = await stationDay();
  for (let bib = 1; bib <= 6; bib += 1) {
    before(day, bib);
    await pushUps(day, bib, 20 + bib);
  }
  expect(await noiseOf(day, "push-up")).toMatchObject({ assumed: true, pairs: 0 });
});

test("fourteen days apart are a pair, and of three marks within four weeks the neighbours are", async () => {
  const day = await stationDay();
  for (let bib = 1; bib <= 3; bib += 1) {
    past(day, bib, "push-up", 20, "2026-10-20", "full");
    past(day, bib, "push-up", 21, "2026-10-31", "full");
    await pushUps(day, bib, 20 + bib);
  }
  // Nine marks less three athletes and two shifts of everybody: four degrees, and two of the start. Two times three pairs
  // that shared a mark would have passed for five.
  expect(await noiseOf(day, "push-up")).toMatchObject({ pairs: 6, degrees: 6 });
});

test("a correction on an earlier day changes bests, verdicts and noise of what came after", async () => {
  const day = await stationDay();
  await pushUps(day, 1, 30);
  await pushUps(day, 2, 22);
  await day.as("organiser").day.close({ dayId: day.dayId });
  const { dayId } = await day
    .as("organiser")
    .day.create({ date: "2026-11-21", title: "A week later", sure: true });
  await day.as("organiser").day.open({ sure: true });
  for (const bib of [1, 2]) setState(day, dayId, day.idOf(bib), "testing", bib);
  await pushUps(day, 1, 27);
  await pushUps(day, 2, 23);
  const page = async () => (await day.as("organiser").people.get({ athleteId: day.idOf(1) })).marks[0];
  expect(await page()).toMatchObject({ news: { standing: "below", verdict: "likely loss", previous: 30 } });
  const loud = fixedIn(day);

  day.desk.store.write(["attempts"], (db) => {
    const [wrong] = attemptsOfDay(db, day.dayId);
    if (wrong === undefined) throw new Error("the first attempt is there");
    const at = day.desk.now().toISOString();
    voidAttempt(db, wrong.id, { reason: "read the wrong line", by: "QA", at });
    const { id } = ticket(null);
    const { athleteId, test: code, variant, note, source } = wrong;
    const again = { id, athleteId, test: code, variant, note, source, at, replaces: wrong.id };
    recordAttempt(db, day.dayId, { ...again, seen: reps(20), enteredBy: "QA" });
  });
  // 7 reps are 2.21 spreads of √(2 · 1.08) · √(1.5² + (0.066 · 23.5)²): the pairs of this day itself count from the next one on.
  expect(await page()).toMatchObject({
    news: { standing: "best", previous: 20, bestBefore: 20, change: 7, verdict: "clear gain" },
  });
  expect(fixedIn(day)).not.toBe(loud);
  expect(day.faults).toEqual([]);
});

test("a slip does not widen what is believed", async () => {
  const day = await stationDay();
  for (let bib = 1; bib <= 2; bib += 1) past(day, bib, "push-up", 20, "2026-11-07", "full");
  await pushUps(day, 1, 21);
  // With the pairs of today, 1 and 9, the typical error would be so large that the slip would hide itself.
  const asked = await day.station.enter(entry(day.idOf(2), "push-up", reps(29)));
  expect(asked).toEqual({
    outcome: "ask",
    questions: [{ key: "plausibility.differsFromLast", values: { last: "20", value: "29" } }],
  });
  expect(await noiseOf(day, "push-up")).toMatchObject({ pairs: 0, used: { number: "2" } });
});

test("trials that swing widely raise the leap's noise, and steady ones change nothing", async () => {
  const day = await stationDay();
  const leaps = async (bib: number, heights: readonly number[]) => {
    await bringTo(day, bib, "vertical");
    const attempts = heights.map((height) => ticket(jump(2100, 2100 + height)));
    await day.station.enter(entry(day.idOf(bib), "vertical", null, { attempts, sure: true }));
  };
  await leaps(1, [380, 400, 402]);
  await leaps(2, [410, 420, 421]);
  await leaps(3, [300, 360, 363]);
  expect(await noiseOf(day, "vertical")).toMatchObject({
    ...{ assumed: true, degrees: 19 },
    trials: { athletes: 3, raised: false },
  });
  await leaps(4, [300, 300, 420]);
  await leaps(5, [300, 420, 300]);
  const told = await noiseOf(day, "vertical");
  expect(told).toMatchObject({ assumed: true, pairs: 0, trials: { athletes: 5, raised: true } });
  expect(Number(told.used.number)).toBeGreaterThan(Number(told.starting.number));
});

test("agreement is spoken of from twenty athletes on, each a row, and lengths in inches", async () => {
  const day = await stationDay();
  for (let bib = 1; bib <= 6; bib += 1) {
    for (const [index, date] of ["2026-01-05", "2026-01-10", "2026-01-15", "2026-01-20"].entries()) {
      past(day, bib, "vertical", 20 * (300 + 40 * bib + 3 * ((index * bib) % 4)), date);
    }
  }
  const { tests, enough } = await day.as("organiser").noise.get({ lengths: "in" });
  expect(enough).toBe(20);
  // Six athletes with four marks each: 18 pairs, and never more than six rows.
  expect(tests[2]).toMatchObject({ pairs: 18, icc: null, worthwhile: null, used: { unit: "in" } });
  const more = Array.from({ length: 20 }, (_, index) => ({
    league: "Foundry Town",
    name: `Skater ${index}`,
  }));
  const ids = addPeople(day, more, null);
  for (const [index, athleteId] of ids.entries()) {
    for (const [at, date] of ["2026-01-05", "2026-01-10"].entries()) {
      pastOf(day, athleteId, "vertical", 20 * (300 + 10 * index + 3 * ((at * index) % 4)), date);
    }
    // Another way of doing a test is another table.
    pastOf(day, athleteId, "push-up", 20 + index, "2026-01-05", "knee");
    pastOf(day, athleteId, "push-up", 21 + index, "2026-01-10", "knee");
    if (index < 5) pastOf(day, athleteId, "push-up", 90, "2026-01-05", "full");
    if (index < 5) pastOf(day, athleteId, "push-up", 30, "2026-01-10", "full");
  }
  const { icc } = await noiseOf(day, "vertical");
  // As a measuring study of the same table says it.
  const value = (from: number, seed: number, at: number) => 20 * (300 + from + 3 * ((at * seed) % 4));
  const rows = [
    ...[1, 2, 3, 4, 5, 6].map((bib) => [0, 1].map((at) => value(40 * bib, bib, at))),
    ...ids.map((_id, index) => [0, 1].map((at) => value(10 * index, index, at))),
  ];
  const study = studyResult(
    rows.map((values, athleteId) => ({ athleteId, values })),
    1,
  )?.icc;
  expect(icc?.low).toBeCloseTo(study?.low ?? 0, 9);
  expect(icc?.high).toBeCloseTo(study?.high ?? 0, 9);
  expect(icc?.value).toBeGreaterThan(0.9);
  expect(icc?.low).toBeLessThan(icc?.value ?? 0);
  expect((await noiseOf(day, "push-up")).icc?.value).toBeGreaterThan(0.9);
});

test("what is entered inside a transaction that fails is not remembered", async () => {
  const day = await stationDay();
  for (let bib = 1; bib <= 3; bib += 1) past(day, bib, "push-up", 20, "2026-11-07", "full");
  await pushUps(day, 1, 21);
  await pushUps(day, 2, 23);
  const { db } = day.desk.store;
  const before = typicalErrorsOf(db, 0)["push-up"];
  const failing = () =>
    day.desk.store.write(["attempts"], (inside) => {
      const at = day.desk.now().toISOString();
      const more = {
        variant: "full",
        enteredBy: "QA",
        note: "",
        source: "station" as const,
        at,
        replaces: null,
      };
      recordAttempt(inside, day.dayId, {
        ...ticket(reps(60)),
        athleteId: day.idOf(3),
        test: "push-up",
        ...more,
      });
      expect(typicalErrorsOf(inside, 0)["push-up"].pairs).toBe(3);
      throw new Error("power cut");
    });
  expect(failing).toThrow("power cut");
  expect(typicalErrorsOf(db, 0)["push-up"]).toEqual(before);
});

test("a hold of nothing counts by the part that every hold has", async () => {
  const day = await stationDay();
  for (let bib = 1; bib <= 4; bib += 1) {
    past(day, bib, "core", bib === 4 ? 0 : 90, "2026-11-07");
    await bringTo(day, bib, "core");
    await day.station.enter(entry(day.idOf(bib), "core", hold(90 + bib), { sure: true }));
  }
  expect(await noiseOf(day, "core")).toMatchObject({ pairs: 4, least: { unit: "s" } });
});

test("an entry of the day asks nothing of all the others again", async () => {
  const day = await stationDay();
  for (let bib = 1; bib <= 4; bib += 1) past(day, bib, "push-up", 20 + bib, "2026-11-07", "full");
  const { db } = day.desk.store;
  const known = noiseOfStore(db, day.dayId);
  await pushUps(day, 1, 24);
  expect(noiseOfStore(db, day.dayId)).toBe(known);
  // The number of all days is another one by now, and what was learnt of the others is so after any change of theirs.
  for (const bib of [2, 3]) past(day, bib, "push-up", 20 + 2 * bib, "2026-11-01", "full");
  expect(noiseOfStore(db, day.dayId)).not.toBe(known);
  expect(noiseOfStore(db, day.dayId)["push-up"].error.pairs).toBe(2);
});
