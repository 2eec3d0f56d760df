import { expect, test } from "vitest";
import { typicalErrorsOf } from "../../electron/api/noise/errors.ts";
import type { TestCode } from "../../electron/domain/tests/registry.ts";
import { attemptsOfDay } from "../../electron/store/tables/attempts.ts";
import { recordAttempt, voidAttempt } from "../../electron/store/tables/record.ts";
import { refusalOf } from "./desk.ts";
import {
  bringTo,
  entry,
  hold,
  jump,
  past,
  reps,
  type StationDay,
  setState,
  stationDay,
  ticket,
} from "./station-day.ts";

/** What the organiser is told of one test. */
async function noiseOf(day: StationDay, test: TestCode) {
  const { tests } = await day.as("organiser").noise.get();
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
  // From 20 reps, 23 is likely a gain and 26 a clear one: the least detectable change of 2 reps is 1.96 · √2 · 2 = 5.5.
  expect(tests[0]).toMatchObject({
    typical: { value: 20, date: null, marks: 0 },
    detectable: { number: "5.5", unit: "reps" },
    likelyFrom: { number: "23" },
    clearFrom: { number: "26" },
    ...{ own: null, trials: null, worthwhile: null, icc: null },
  });
});

test("the board asks in vain", async () => {
  const day = await stationDay();
  expect(await refusalOf(day.as("board").noise.get())).toEqual({ key: "door.forbidden" });
});

// Hopkins 2000, Sports Medicine 30(1): these five pairs have a typical error of 2.8896 (1.73 to 8.30).
test("pairs within 14 days come in as they are entered, and change what is used", async () => {
  const day = await stationDay();
  const before = [62, 78, 81, 55, 66];
  const after = [67, 76, 87, 55, 63];
  before.forEach((count, index) => {
    past(day, index + 1, "push-up", count, "2026-11-01", "full");
  });
  await pushUps(day, 1, 67);
  // One difference has no spread.
  expect(await noiseOf(day, "push-up")).toMatchObject({ assumed: true, pairs: 0, amount: 2, own: null });
  for (const [index, count] of after.entries()) if (index > 0) await pushUps(day, index + 1, count);
  const told = await noiseOf(day, "push-up");
  expect(told).toMatchObject({
    ...{ assumed: false, pairs: 5, degrees: 6, startingDegrees: 2, starting: 2 },
    own: {
      used: { number: "2.9", unit: "reps" },
      low: { number: "1.7", unit: "reps" },
      high: { number: "8.3", unit: "reps" },
      degrees: 4,
    },
    typical: { value: 67, date: "2026-11-14", marks: 5 },
  });
  expect(told.amount).toBeCloseTo(Math.sqrt((2 * 2 ** 2 + 4 * 2.8896367 ** 2) / 6), 6);
  expect(typicalErrorsOf(day.desk.store.db)["push-up"].amount).toBe(told.amount);
});

test("a verdict follows the error that the store has learnt", async () => {
  const day = await stationDay();
  past(day, 6, "push-up", 20, "2026-06-01", "full");
  await pushUps(day, 6, 26);
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
  expect((await noiseOf(day, "push-up")).amount).toBeGreaterThan(3);
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

test("fourteen days apart are a pair, and of three marks the neighbours are", async () => {
  const day = await stationDay();
  for (let bib = 1; bib <= 3; bib += 1) {
    past(day, bib, "push-up", 20, "2026-10-20", "full");
    past(day, bib, "push-up", 21, "2026-10-31", "full");
    await pushUps(day, bib, 20 + bib);
  }
  expect(await noiseOf(day, "push-up")).toMatchObject({ pairs: 6, degrees: 7 });
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
  const loud = (await noiseOf(day, "push-up")).amount;

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
  // Differences of 7 and 1 have a typical error of 3, with the start 2.38: 7 reps are 2.08 spreads of a difference.
  expect(await page()).toMatchObject({
    news: { standing: "best", previous: 20, bestBefore: 20, change: 7, verdict: "clear gain" },
  });
  expect((await noiseOf(day, "push-up")).amount).toBeCloseTo(Math.sqrt((2 * 4 + 9) / 3), 9);
  expect((await noiseOf(day, "push-up")).amount).not.toBe(loud);
  expect(day.faults).toEqual([]);
});

test("a slip does not widen what is believed", async () => {
  const day = await stationDay();
  for (let bib = 1; bib <= 2; bib += 1) past(day, bib, "push-up", 20, "2026-11-07", "full");
  await pushUps(day, 1, 21);
  // Of two pairs, 1 and 9, the typical error would be 4, and four of the blend 11.3: the slip would hide itself.
  const asked = await day.station.enter(entry(day.idOf(2), "push-up", reps(29)));
  expect(asked).toEqual({
    outcome: "ask",
    questions: [{ key: "plausibility.differsFromLast", values: { last: "20", value: "29" } }],
  });
  expect(await noiseOf(day, "push-up")).toMatchObject({ pairs: 0, amount: 2 });
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
    ...{ amount: 0.04, assumed: true, degrees: 2 },
    trials: { athletes: 3, raised: false },
  });
  await leaps(4, [300, 300, 420]);
  await leaps(5, [300, 420, 300]);
  const told = await noiseOf(day, "vertical");
  expect(told).toMatchObject({ assumed: true, pairs: 0, trials: { athletes: 5, raised: true } });
  expect(told.amount).toBeGreaterThan(0.1);
});

test("spread between athletes is spoken of from twenty marks on, and lengths in inches", async () => {
  const day = await stationDay();
  for (let bib = 1; bib <= 6; bib += 1) {
    for (const [index, date] of ["2026-01-05", "2026-01-10", "2026-01-15", "2026-01-20"].entries()) {
      past(day, bib, "vertical", 20 * (300 + 40 * bib + 3 * ((index * bib) % 4)), date);
    }
  }
  const { tests, enough } = await day.as("organiser").noise.get({ lengths: "in" });
  const told = tests[2];
  expect(enough).toBe(20);
  // Six athletes with three neighbours each: 18 pairs are not yet enough for an intraclass correlation.
  expect(told).toMatchObject({ pairs: 18, icc: null, worthwhile: null, used: { unit: "in" } });
  for (let bib = 1; bib <= 6; bib += 1) past(day, bib, "vertical", 20 * (301 + 40 * bib), "2026-01-25");
  const { icc, pairs } = await noiseOf(day, "vertical");
  expect(pairs).toBe(24);
  expect(icc?.value).toBeGreaterThan(0.9);
  expect(icc?.low).toBeLessThan(icc?.value ?? 0);
});

test("what is entered inside a transaction that fails is not remembered", async () => {
  const day = await stationDay();
  for (let bib = 1; bib <= 3; bib += 1) past(day, bib, "push-up", 20, "2026-11-07", "full");
  await pushUps(day, 1, 21);
  await pushUps(day, 2, 23);
  const { db } = day.desk.store;
  const before = typicalErrorsOf(db)["push-up"];
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
      expect(typicalErrorsOf(inside)["push-up"].pairs).toBe(3);
      throw new Error("power cut");
    });
  expect(failing).toThrow("power cut");
  expect(typicalErrorsOf(db)["push-up"]).toEqual(before);
});

test("holds are pooled as shares, and one of zero is left out", async () => {
  const day = await stationDay();
  for (let bib = 1; bib <= 4; bib += 1) {
    past(day, bib, "core", bib === 4 ? 0 : 90, "2026-11-07");
    await bringTo(day, bib, "core");
    await day.station.enter(entry(day.idOf(bib), "core", hold(90 + bib), { sure: true }));
  }
  expect(await noiseOf(day, "core")).toMatchObject({ pairs: 3, kind: "share" });
});
