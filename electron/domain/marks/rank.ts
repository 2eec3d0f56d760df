import type { Mark } from "../tests/protocol.ts";

/** Beyond every value that a mark can have in its grains: no clock of a day runs for so many milliseconds. */
const beyond = 1_000_000_000;
/** More reps than any round of a circuit has. */
const mostReps = 10_000;

/**
 * Returns the number by which a mark is placed among others of its test: its value, and for whoever stopped one behind
 * every finisher's, the lower the more rounds and reps they did. Only a test in which less is better has unfinished
 * marks. Null for an incomplete mark, which has no place.
 */
export function rankOf(mark: Mark): number | null {
  switch (mark.state) {
    case "complete":
      return mark.value;
    case "unfinished":
      return 2 * beyond - (mark.rounds * mostReps + mark.reps);
    case "incomplete":
      return null;
  }
}

/** True for a rank of somebody who stopped. */
export function isUnfinished(rank: number): boolean {
  return rank > beyond;
}

/**
 * Returns the middle of some ranks, at which half are no better; of an even count the mean of both middle ones. Where one
 * of them is unfinished it is the better one, and null where that is unfinished too: then there is no middle to tell.
 */
export function middleRank(ranks: readonly number[]): number | null {
  const sorted = ranks.toSorted((a, b) => a - b);
  const low = sorted[Math.floor((sorted.length - 1) / 2)];
  const high = sorted[Math.ceil((sorted.length - 1) / 2)];
  if (low === undefined || high === undefined || isUnfinished(low)) return null;
  return isUnfinished(high) ? low : (low + high) / 2;
}
