import { changeBetween, gain } from "../statistics/change.ts";
import type { SharedChange } from "../statistics/common-causes.ts";
import type { MarkNews } from "../statistics/news.ts";
import type { Variation, Variations } from "../statistics/variation.ts";
import { protocolOf, type TestCode, testCodes } from "../tests/registry.ts";
import type { SummaryDay, SummaryMark } from "./day.ts";

/** An athlete's change since the last comparable mark, in grains; positive is better. */
export interface Pair extends SharedChange {
  readonly league: string;
  /** Without what knowing the test adds. */
  readonly gain: number;
  /** What that was. */
  readonly learnt: number;
  readonly mark: SummaryMark;
}

/** The marks of one test and variant, of all leagues. */
export interface Group {
  readonly test: TestCode;
  readonly variant: string;
  readonly marks: readonly LeagueMark[];
  readonly pairs: readonly Pair[];
  readonly variation: Variation;
}

type LeagueMark = SummaryMark & { readonly league: string };

export function groupsOf(day: SummaryDay, variations: Variations): Group[] {
  const leagueOf = new Map(day.people.map(({ athleteId, league }) => [athleteId, league]));
  return testCodes.flatMap((test) =>
    protocolOf(test).variants.map((variant) => {
      const marks = day.marks
        .filter((mark) => mark.test === test && mark.variant === variant)
        .map((mark) => ({ ...mark, league: leagueOf.get(mark.athleteId) ?? "" }));
      const variation = variations[test];
      return { test, variant, marks, variation, pairs: marks.flatMap((mark) => pairOf(mark, variation)) };
    }),
  );
}

/** Returns the pair of a mark that may be compared with the one before: its news tell a change. */
function pairOf(mark: LeagueMark, variation: Variation): Pair[] {
  const { league, test, news } = mark;
  if (mark.mark.state !== "complete" || news === null || news.change === null) return [];
  const { previous, previousDate, earlier } = news;
  if (previous === null || previousDate === null) return [];
  const change = changeBetween(test, previous, mark.mark.value, variation.error);
  const size = change.spread / Math.SQRT2;
  const learnt = learntSinceLast(test, news, variation) * size;
  return [{ league, size, since: previousDate, visits: earlier, gain: change.gain - learnt, learnt, mark }];
}

/** Returns what the newest visit adds by knowing the test, in typical errors; positive is better. */
function learntSinceLast(test: TestCode, { earlier }: MarkNews, { learning }: Variation): number {
  return gain(protocolOf(test).better, 0, learning.steps[earlier - 1]?.by ?? 0);
}
