import { clearChance, shareBelow, spreadsBelow, type TypicalError } from "../statistics/change.ts";
import type { Moved } from "../statistics/news.ts";
import { quantile } from "../statistics/quantile.ts";
import { leastTogether } from "../statistics/shared.ts";
import { protocolOf, type TestCode, testCodes } from "../tests/registry.ts";
import type { SummaryMark } from "./day.ts";

/** How many clear gains and losses there would be; a mean of many such days, so seldom whole. */
export interface ClearWords {
  readonly gains: number;
  readonly losses: number;
}

/** What everybody moved by, in typical errors; `left` is the share of an athlete's own variance that is not in it. */
interface CommonMove {
  readonly by: number;
  readonly left: number;
}

/**
 * Returns how many clear gains and losses these marks would make if nobody had changed: each athlete's own chance of a
 * false word, by the number of marks behind it and by what everybody moved that day, such as a floor. Whoever is compared
 * with the same day was moved alike: that is the middle one's change, since single athletes who truly changed hardly move it.
 * Fewer than eight say nothing of what moved all, and then the word is as often false as it may be.
 * @param marks of one test and variant @param whole everybody's of that day, which say what moved all
 */
export function clearByChance(
  marks: readonly SummaryMark[],
  whole: readonly SummaryMark[],
  error: TypicalError,
): ClearWords {
  const moves = commonMoves(whole);
  // Found by search: once and not for each mark.
  const clear = spreadsBelow(clearChance, error);
  const words = marks.flatMap(({ news }) =>
    news?.moved ? [clearWords(news.moved, moves.get(news.previousDate), clear, error)] : [],
  );
  return {
    gains: words.reduce((sum, { gains }) => sum + gains, 0),
    losses: words.reduce((sum, { losses }) => sum + losses, 0),
  };
}

/** Returns how many clear gains a day, or a league's part of it, would make in all tests. See {@link clearByChance}. */
export function clearGainsByChance(
  part: readonly SummaryMark[],
  whole: readonly SummaryMark[],
  errors: Readonly<Record<TestCode, TypicalError>>,
): number {
  const inTest = testCodes.flatMap((test) =>
    protocolOf(test).variants.map((variant) => {
      const isOf = (mark: SummaryMark) => mark.test === test && mark.variant === variant;
      return clearByChance(part.filter(isOf), whole.filter(isOf), errors[test]).gains;
    }),
  );
  return inTest.reduce((sum, gains) => sum + gains, 0);
}

/** Returns what moved those who are compared with the same day, by that day. */
function commonMoves(whole: readonly SummaryMark[]): ReadonlyMap<string | null, CommonMove> {
  const news = whole.flatMap((mark) => mark.news ?? []).filter(({ moved }) => moved !== null);
  const groups = [...Map.groupBy(news, ({ previousDate }) => previousDate)];
  const enough = groups.filter(([, group]) => group.length >= leastTogether);
  return new Map(
    enough.map(([day, group]) => [day, commonMove(group.flatMap(({ moved }) => moved?.by ?? []))]),
  );
}

/** A middle one of n has about π / (2n + 1) of one athlete's variance (the normal distribution's; from memory). */
function commonMove(moves: readonly number[]): CommonMove {
  return { by: quantile(moves, 0.5), left: 1 - Math.PI / (2 * moves.length + 1) };
}

function clearWords(
  { judged, alone }: Moved,
  common: CommonMove | undefined,
  clear: number,
  error: TypicalError,
): ClearWords {
  if (common === undefined) return { gains: 1 - clearChance, losses: 1 - clearChance };
  const reach = judged * clear;
  const own = alone * Math.sqrt(common.left);
  return {
    gains: 1 - shareBelow((reach - common.by) / own, error),
    losses: shareBelow((-reach - common.by) / own, error),
  };
}
