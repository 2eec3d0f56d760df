import { beforeEach, describe, expect, test } from "vitest";
import { chanceOfDirection } from "../../electron/domain/statistics/direction.ts";
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

  test("each mark is judged against the one before it, and stands among all before it", async () => {
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
    // Φ(6 / (√2 · 2)) = 0.983 is clear; Φ(5 / (√2 · 2)) = 0.9615 is likely.
    expect(told).toEqual([
      [20, "first", null, null],
      [26, "best", 6, "clear gain"],
      [21, "below", -5, "likely loss"],
      [26, "equal", 5, "likely gain"],
    ]);
    // The chance is the number behind the verdict: Φ(5 / (√2 · 2)) = Φ(1.7678) = 0.9615, worked out apart.
    expect(series?.points.at(-1)).toMatchObject({ verdict: "likely gain", today: true });
    expect(series?.points.at(-1)?.chance).toBeCloseTo(0.9615, 4);
    // The band lies around the test before today's: 21 ± 0.8416 · √2 · 2.
    expect(series?.noise?.low).toBeCloseTo(21 - 2.3805, 3);
    expect(series?.noise?.high).toBeCloseTo(21 + 2.3805, 3);
    expect(series?.error).toEqual({ assumed: true, pairs: 0 });
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
    // A share of the mark is taken at the mean: 8000 · (1 + k) / (1 − k), k = 0.8416 · √2 · 0.04 / 2.
    expect(series?.noise?.high).toBeCloseTo(8000 * (1.023804 / 0.976196), 1);
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

test("the chance behind a verdict does not depend on which way the test counts", () => {
  expect(chanceOfDirection("endurance", 360_000, 340_000)).toBeCloseTo(
    chanceOfDirection("endurance", 340_000, 360_000),
    12,
  );
  expect(chanceOfDirection("push-up", 20, 20)).toBe(0.5);
});
