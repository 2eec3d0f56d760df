import { beforeEach, describe, expect, test } from "vitest";
import { fingerprint } from "../../electron/domain/tests/fingerprint.ts";
import type { TestCode } from "../../electron/domain/tests/registry.ts";
import { defaultParameters } from "../../electron/domain/tests/registry.ts";
import { addPastMark } from "../../electron/store/tables/past-marks.ts";
import { type BoardDay, boardDay } from "./board-day.ts";
import { reps } from "./station-day.ts";

let day: BoardDay;

beforeEach(async () => {
  day = await boardDay([{ league: "Alder", name: "Ada", category: "women", share: true }]);
});

const page = () => day.as("organiser").people.get({ athleteId: day.ids[0] ?? 0 });
const push = (amount: number) => day.enter(1, "push-up", reps(amount));

function past(test: TestCode, variant: string, value: number, date: string, rules?: string): void {
  const name = rules ?? fingerprint(test, variant, defaultParameters(test));
  day.desk.store.write(["people"], (db) =>
    addPastMark(db, { athleteId: day.ids[0] ?? 0, fingerprint: name, date, test, variant, value }),
  );
}

describe("one athlete's marks over time", () => {
  test("nothing at all is no series", async () => {
    expect(await page()).toMatchObject({ series: [], apart: [] });
  });

  test("each mark is judged against the level by those before it, and stands among all of them", async () => {
    for (const [value, date] of [
      [20, "2025-03-15"],
      [26, "2025-07-12"],
      [21, "2026-03-14"],
    ] as const) {
      past("push-up", "full", value, date);
    }
    await push(26);
    const [series] = (await page()).series;
    const told = series?.points.map(({ value, standing, change, verdict }) => [
      value,
      standing,
      change,
      verdict,
    ]);
    // 6 are 1.91 of √(2 · 1.08) · √(1.5² + (0.066 · 23)²), just less than clear. Then in 17 weeks the variance of 1.08 grows
    // by 1.055, so that 26 counts 0.664: from 23.98 to 21 are 1.05 spreads of √1.797, and from the level that follows to 26
    // are 1.4.
    expect(told).toEqual([
      [20, "first", null, null],
      [26, "best", 6, "likely gain"],
      [21, "below", -3, "likely loss"],
      [26, "equal", 4, "likely gain"],
    ]);
    // The word and the chance are two things: of such gains in a test that varies this much, fewer are real.
    expect(series?.points.at(-1)).toMatchObject({
      verdict: "likely gain",
      today: true,
      earlier: 3,
      level: 22,
    });
    expect(series?.points.at(-1)?.chanceReal).toBeGreaterThan(0.65);
    expect(series?.points.at(-1)?.chanceReal).toBeLessThan(0.9);
    // The band lies around the level before today's test, where somebody who stayed the same lands four times of five.
    expect(series?.noise?.low).toBeGreaterThan(19);
    expect(series?.noise?.high).toBeLessThan(26);
    // What they are good for with today's, and how it moves: four marks over twenty months.
    expect(series?.level).toMatchObject({
      written: { number: "25", unit: "reps" },
      within: { unit: "reps" },
      speed: { direction: "unclear", perMonth: { unit: "reps" } },
    });
    expect(series?.error).toEqual({ assumed: true, pairs: 0, changes: 2 });
  });

  test("the newest one says what every other screen says of it", async () => {
    past("push-up", "full", 20, "2025-03-15");
    past("push-up", "full", 24, "2026-03-14");
    await push(25);
    const { series, marks } = await page();
    const { standing, change, verdict } = series[0]?.points.at(-1) ?? {};
    expect(marks[0]?.news).toMatchObject({ standing, change, verdict });
  });

  test("a correction derives everything after it anew", async () => {
    past("push-up", "full", 20, "2026-03-14");
    await push(35);
    const before = await page();
    expect(before.series[0]?.points.at(-1)).toMatchObject({ value: 35, verdict: "clear gain" });
    const replaces = { attemptId: before.attempts[0]?.attemptId ?? "", reason: "the next lane's" };
    const seen = { id: "33333333-3333-4333-8333-333333333333", seen: reps(21) };
    await day.as("station").station.enter({
      ...{ athleteId: day.ids[0] ?? 0, test: "push-up", variant: "full", by: "QA", sure: true, replaces },
      attempts: [seen],
    });
    const after = await page();
    expect(after.series[0]?.points.at(-1)).toMatchObject({ value: 21, verdict: "noise", standing: "best" });
  });

  test("without a mark of today the band lies around the newest", async () => {
    past("vertical", "", 8000, "2026-03-14");
    const [series] = (await page()).series;
    expect(series).toMatchObject({ test: "vertical", placed: false, place: null });
    // The typical error is taken at the mean, 40.97 cm: 0.8416 · √(2 · 1.08) · √(1² + (0.0312 · 41)²) = 2.01.
    expect(series?.noise?.high).toBeCloseTo(42.01 * 200, -1);
  });

  test("variants are series of their own", async () => {
    past("push-up", "knee", 30, "2026-03-14");
    await push(12);
    expect((await page()).series.map(({ variant, points }) => [variant, points.length])).toEqual([
      ["full", 1],
      ["knee", 1],
    ]);
  });
});

describe("marks apart", () => {
  test("other rules, the same date on a sheet, and dates to come", async () => {
    past("push-up", "full", 33, "2025-03-15", "push-up/full bpm=30");
    past("push-up", "full", 22, "2026-11-14");
    past("push-up", "full", 23, "2027-01-01");
    await push(25);
    const { series, apart } = await page();
    expect(series[0]?.points.map(({ value }) => value)).toEqual([25]);
    expect(apart.map(({ date, why }) => [date, why])).toEqual([
      ["2027-01-01", "notEarlier"],
      ["2026-11-14", "notEarlier"],
      ["2025-03-15", "otherRules"],
    ]);
  });

  test("with no day at hand the newest mark's rules are those that compare", async () => {
    past("push-up", "full", 33, "2025-03-15", "push-up/full bpm=30");
    past("push-up", "full", 34, "2024-03-15", "push-up/full bpm=30");
    past("push-up", "full", 22, "2023-03-14");
    await day.as("organiser").day.close({ dayId: day.dayId });
    const { series, apart } = await page();
    expect(series[0]?.points.map(({ value }) => value)).toEqual([34, 33]);
    expect(apart.map(({ written }) => written.number)).toEqual(["22"]);
  });
});
