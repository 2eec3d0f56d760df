import type { TypicalError, Verdict } from "../statistics/change.ts";
import type { MarkNews } from "../statistics/news.ts";
import type { Standing } from "../statistics/standing.ts";
import { type TestCode, testCodes } from "../tests/registry.ts";
import { clearGainsByChance } from "./clear-by-chance.ts";
import type { SummaryDay } from "./day.ts";
import type { RollRow } from "./roll.ts";

/** The totals of a day. */
export interface Totals {
  /** Athletes on the list. */
  readonly listed: number;
  /** Athletes who came to the table, testing or not. */
  readonly came: number;
  /** Athletes with at least one complete mark. */
  readonly measured: number;
  /** Athletes with a complete mark in all five tests. */
  readonly whole: number;
  readonly firsts: number;
  readonly bests: number;
  readonly clearGains: number;
  /**
   * How many there would be if nobody had changed: bests in the mean of many such days, clear gains by what this day moved
   * for everybody.
   */
  readonly byChance: { readonly bests: number; readonly clearGains: number };
}

/** The counts of one test: its marks, and their standings and verdicts. */
export interface TestCounts {
  readonly test: TestCode;
  /** Number of complete marks; the standings add up to it. */
  readonly marks: number;
  readonly standings: Readonly<Record<Standing, number>>;
  /** Verdicts of the marks that had an earlier one to compare with. */
  readonly verdicts: Readonly<Record<Verdict, number>>;
}

export function countsOf(day: SummaryDay): TestCounts[] {
  return testCodes.map((test) => {
    const news = day.marks.filter((mark) => mark.test === test).flatMap((mark) => mark.news ?? []);
    const standings = { first: 0, best: 0, equal: 0, below: 0 };
    const verdicts = { noise: 0, "likely gain": 0, "likely loss": 0, "clear gain": 0, "clear loss": 0 };
    for (const { standing, verdict } of news) {
      standings[standing] += 1;
      if (verdict !== null) verdicts[verdict] += 1;
    }
    return { test, marks: news.length, standings, verdicts };
  });
}

/**
 * Returns how many of these marks would be bests by chance alone. Of somebody who stays the same, the newest of k + 1
 * marks is the best of them as often as any other.
 */
export function bestsByChance(news: readonly Pick<MarkNews, "earlier">[]): number {
  const compared = news.filter(({ earlier }) => earlier > 0);
  return compared.reduce((sum, { earlier }) => sum + 1 / (earlier + 1), 0);
}

/** @param whole everybody's day, of which `day` may be a league's part */
export function totalsOf(
  day: SummaryDay,
  roll: readonly RollRow[],
  whole: SummaryDay,
  errors: Readonly<Record<TestCode, TypicalError>>,
): Totals {
  const counts = countsOf(day);
  const sum = (pick: (test: TestCounts) => number) => counts.reduce((total, test) => total + pick(test), 0);
  return {
    listed: roll.length,
    came: roll.filter(({ who }) => who.state !== "expected" && who.state !== "no-show").length,
    measured: roll.filter(({ tests }) => tests.some(({ gap }) => gap === null)).length,
    whole: roll.filter(({ tests }) => tests.every(({ gap }) => gap === null)).length,
    firsts: sum(({ standings }) => standings.first),
    bests: sum(({ standings }) => standings.best),
    clearGains: sum(({ verdicts }) => verdicts["clear gain"]),
    byChance: {
      bests: bestsByChance(day.marks.flatMap(({ news }) => news ?? [])),
      clearGains: clearGainsByChance(day.marks, whole.marks, errors),
    },
  };
}
