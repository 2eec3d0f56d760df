import type { Verdict } from "../statistics/change.ts";
import type { Standing } from "../statistics/standing.ts";
import { type TestCode, testCodes } from "../tests/registry.ts";
import type { SummaryDay } from "./day.ts";
import type { RollRow } from "./roll.ts";

/** The day in a few numbers. */
export interface Totals {
  /** On the list. */
  readonly listed: number;
  /** Came to the table, whether they tested or not. */
  readonly came: number;
  /** Have at least one complete mark. */
  readonly measured: number;
  /** Have a complete mark of all five tests. */
  readonly whole: number;
  readonly firsts: number;
  readonly bests: number;
  readonly clearGains: number;
}

/** One test: how many marks, and what they are worth to those who made them. */
export interface TestCounts {
  readonly test: TestCode;
  /** Complete marks; the standings add up to it. */
  readonly marks: number;
  readonly standings: Readonly<Record<Standing, number>>;
  /** Of the marks that had an earlier one to be held against. */
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

export function totalsOf(day: SummaryDay, roll: readonly RollRow[]): Totals {
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
  };
}
