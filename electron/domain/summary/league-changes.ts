import { mean, sampleVariance } from "simple-statistics";
import type { TypicalError, Verdict } from "../statistics/change.ts";
import { commonVariance, loadsBetween, loadsOf, varianceApart } from "../statistics/common-causes.ts";
import { holdTogether } from "../statistics/holm.ts";
import { differenceOfMeans, type Estimated, meanChange } from "../statistics/mean-change.ts";
import { type TrueSpread, trueSpread } from "../statistics/responses.ts";
import { leastTogether } from "../statistics/shared.ts";
import type { Variations } from "../statistics/variation.ts";
import type { TestCode } from "../tests/registry.ts";
import { type ClearWords, clearByChance } from "./clear-by-chance.ts";
import type { SummaryDay } from "./day.ts";
import { type Group, groupsOf, type Pair } from "./league-pairs.ts";
import { inOrder } from "./roll.ts";

/** Largest chance that any league's change of a day is called more than chance when nobody has changed. */
const errorRate = 0.05;
const level = 0.95;

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
  /** Without what knowing the test adds; what whole days move is in it, and as large as it may well be in its interval. */
  readonly mean: Estimated;
  /** What knowing the test added, and was taken off; 0 where that is not known. */
  readonly learnt: number;
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

/**
 * Returns each league's change in each test and variant that it did, by league and test.
 * @param day the whole day: the others are what a league is compared with
 */
export function leagueChangesOf(day: SummaryDay, variations: Variations): LeagueChange[] {
  const groups = groupsOf(day, variations);
  const leagues = [...new Set(inOrder(day.people).map(({ league }) => league))];
  const rows = leagues.flatMap((league) => groups.flatMap((group) => rowOf(league, group)));
  return withHolding(rows);
}

function rowOf(league: string, group: Group): LeagueChange[] {
  const { test, variant } = group;
  const marks = group.marks.filter((mark) => mark.league === league && mark.mark.state !== "incomplete");
  const pairs = group.pairs.filter((pair) => pair.league === league);
  if (marks.length === 0) return [];
  const unfinished = marks.filter(({ mark }) => mark.state === "unfinished").length;
  const firsts = marks.filter(({ news }) => news?.standing === "first").length;
  const unlike = marks.length - unfinished - firsts - pairs.length;
  const found = pairs.length < leastTogether ? null : foundIn(pairs, group);
  return [{ league, test, variant, pairs: pairs.length, firsts, unlike, unfinished, found }];
}

function foundIn(pairs: readonly Pair[], group: Group): FoundChange {
  const { error } = group.variation;
  const called = (word: Verdict) => pairs.filter(({ mark }) => mark.news?.verdict === word).length;
  return {
    mean: meanChange(gainsOf(pairs), level, commonVariance(loadsOf(pairs), group.variation)),
    learnt: mean(pairs.map(({ learnt }) => learnt)),
    holds: false,
    spread: spreadOf(pairs, group),
    error: Math.sqrt(mean(pairs.map(({ size }) => size ** 2))),
    assumed: error.assumed,
    clearGains: called("clear gain"),
    clearLosses: called("clear loss"),
    byChance: clearByChance(
      pairs.map(({ mark }) => mark),
      group.marks,
      error,
    ),
    others: againstOthers(pairs, group),
  };
}

const gainsOf = (pairs: readonly Pair[]) => pairs.map(({ gain }) => gain);

/** What days and visits moved for some of them and not for others is no difference between athletes. */
function spreadOf(pairs: readonly Pair[], { variation }: Group): TrueSpread {
  const noise = 2 * mean(pairs.map(({ size }) => size ** 2)) + varianceApart(pairs, variation);
  return trueSpread(
    { square: sampleVariance(gainsOf(pairs)), degrees: pairs.length - 1 },
    { square: noise, degrees: degreesOf(variation.error) },
  );
}

/** An assumption is taken as known, as in every verdict. */
function degreesOf({ assumed, degrees }: TypicalError): number {
  return assumed ? Number.POSITIVE_INFINITY : degrees;
}

function againstOthers(pairs: readonly Pair[], group: Group): FoundChange["others"] {
  const others = group.pairs.filter(({ league }) => league !== pairs[0]?.league);
  if (others.length < leastTogether) return null;
  const apart = commonVariance(loadsBetween(loadsOf(pairs), loadsOf(others)), group.variation);
  return { ...differenceOfMeans(gainsOf(pairs), gainsOf(others), level, apart), pairs: others.length };
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
