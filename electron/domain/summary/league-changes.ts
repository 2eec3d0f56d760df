import { mean, sampleVariance } from "simple-statistics";
import { type Change, changeBetween, type TypicalError } from "../statistics/change.ts";
import { holdTogether } from "../statistics/holm.ts";
import { differenceOfMeans, type Estimated, meanChange } from "../statistics/mean-change.ts";
import type { MarkNews } from "../statistics/news.ts";
import { type TrueSpread, trueSpread } from "../statistics/responses.ts";
import { leastTogether } from "../statistics/shared.ts";
import { protocolOf, type TestCode, testCodes } from "../tests/registry.ts";
import { type ClearWords, clearByChance } from "./clear-by-chance.ts";
import type { SummaryDay, SummaryMark } from "./day.ts";
import { inOrder } from "./roll.ts";

/** Largest chance that any league's change of a day is called more than chance when nobody has changed. */
const errorRate = 0.05;

/** How the athletes of one league changed in one test and variant since their own last one; changes are grains. */
export interface LeagueChange {
  readonly league: string;
  readonly test: TestCode;
  readonly variant: string;
  /** Athletes whose result compares with their last one: they alone are in `found`. */
  readonly pairs: number;
  /** Athletes with a first result. */
  readonly firsts: number;
  /** Athletes whose last result was the best of more or fewer trials. */
  readonly unlike: number;
  /** Athletes who stopped before the end of the test, and so have no result. */
  readonly unfinished: number;
  /** Null for fewer than {@link leastTogether} pairs. */
  readonly found: FoundChange | null;
}

/** What can be said of a league's change; positive is better, whichever way the test counts. */
interface FoundChange {
  readonly mean: Estimated;
  /** True if it is more than chance makes, looking at all leagues and tests of the day at once. */
  readonly holds: boolean;
  /** How far the athletes' true changes lie apart. */
  readonly spread: TrueSpread;
  /** The typical error at these athletes' results, in grains, and whether it is an assumption. */
  readonly error: number;
  readonly assumed: boolean;
  readonly clearGains: number;
  readonly clearLosses: number;
  /** How many clear ones there would be if nobody had changed but by what moved everybody that day. */
  readonly byChance: ClearWords;
  /** The mean above that of all other leagues' athletes; null where those are fewer than {@link leastTogether}. */
  readonly others: (Estimated & { readonly pairs: number }) | null;
}

/** An athlete's change since the last comparable mark. */
interface Pair {
  readonly league: string;
  readonly change: Change;
  readonly news: MarkNews;
  readonly mark: SummaryMark;
}

/** The marks of one test and variant, of all leagues. */
interface Group {
  readonly test: TestCode;
  readonly variant: string;
  readonly marks: readonly (SummaryMark & { readonly league: string })[];
  readonly pairs: readonly Pair[];
  readonly error: TypicalError;
}

/**
 * Returns each league's change in each test and variant that it did, by league and test.
 * @param day the whole day: the others are what a league is compared with
 */
export function leagueChangesOf(
  day: SummaryDay,
  errors: Readonly<Record<TestCode, TypicalError>>,
): LeagueChange[] {
  const groups = groupsOf(day, errors);
  const leagues = [...new Set(inOrder(day.people).map(({ league }) => league))];
  const rows = leagues.flatMap((league) => groups.flatMap((group) => rowOf(league, group)));
  return withHolding(rows);
}

function groupsOf(day: SummaryDay, errors: Readonly<Record<TestCode, TypicalError>>): Group[] {
  const leagueOf = new Map(day.people.map(({ athleteId, league }) => [athleteId, league]));
  return testCodes.flatMap((test) =>
    protocolOf(test).variants.map((variant) => {
      const marks = day.marks
        .filter((mark) => mark.test === test && mark.variant === variant)
        .map((mark) => ({ ...mark, league: leagueOf.get(mark.athleteId) ?? "" }));
      const error = errors[test];
      return { test, variant, marks, error, pairs: marks.flatMap((mark) => pairOf(mark, error)) };
    }),
  );
}

/** Returns the pair of a mark that may be compared with the one before: its news tell a change. */
function pairOf(marked: Group["marks"][number], error: TypicalError): Pair[] {
  const { league, test, mark, news } = marked;
  if (mark.state !== "complete" || news === null || news.change === null || news.previous === null) return [];
  return [{ league, news, mark: marked, change: changeBetween(test, news.previous, mark.value, error) }];
}

function rowOf(league: string, group: Group): LeagueChange[] {
  const { test, variant } = group;
  const marks = group.marks.filter((mark) => mark.league === league && mark.mark.state !== "incomplete");
  const pairs = group.pairs.filter((pair) => pair.league === league);
  if (marks.length === 0) return [];
  const unfinished = marks.filter(({ mark }) => mark.state === "unfinished").length;
  const firsts = marks.filter(({ news }) => news?.standing === "first").length;
  const unlike = marks.length - unfinished - firsts - pairs.length;
  const others = group.pairs.filter((pair) => pair.league !== league);
  const found = pairs.length < leastTogether ? null : foundIn(pairs, others, group);
  return [{ league, test, variant, pairs: pairs.length, firsts, unlike, unfinished, found }];
}

function foundIn(pairs: readonly Pair[], others: readonly Pair[], { error, marks }: Group): FoundChange {
  const gains = pairs.map(({ change }) => change.gain);
  const noise = mean(pairs.map(({ change }) => change.spread ** 2));
  // An assumption is taken as known, as in every verdict.
  const degrees = error.assumed ? Number.POSITIVE_INFINITY : error.degrees;
  const called = (word: MarkNews["verdict"]) => pairs.filter(({ news }) => news.verdict === word).length;
  return {
    mean: meanChange(gains),
    holds: false,
    spread: trueSpread(
      { square: sampleVariance(gains), degrees: gains.length - 1 },
      { square: noise, degrees },
    ),
    error: Math.sqrt(noise / 2),
    assumed: error.assumed,
    clearGains: called("clear gain"),
    clearLosses: called("clear loss"),
    byChance: clearByChance(
      pairs.map(({ mark }) => mark),
      marks,
      error,
    ),
    others: againstOthers(gains, others),
  };
}

function againstOthers(gains: readonly number[], others: readonly Pair[]): FoundChange["others"] {
  if (others.length < leastTogether) return null;
  const theirs = others.map(({ change }) => change.gain);
  return { ...differenceOfMeans(gains, theirs), pairs: theirs.length };
}

/** Marks the changes that hold where one looks at all of them at once. */
function withHolding(rows: readonly LeagueChange[]): LeagueChange[] {
  const said = rows.flatMap(({ found }) => found ?? []);
  const held = holdTogether(
    said.map(({ mean: { byChance } }) => byChance),
    errorRate,
  );
  const holding = new Set(said.filter((_each, at) => held[at]));
  return rows.map((row) =>
    row.found === null ? row : { ...row, found: { ...row.found, holds: holding.has(row.found) } },
  );
}
