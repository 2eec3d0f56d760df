import type { AgilityLane } from "../../../electron/domain/tests/agility/live.ts";
import { mostOfCounts } from "../../../electron/domain/tests/agility/protocol.ts";

/** The questions after the whistle, in order. */
export const countNames = ["laps", "extra", "touches"] as const;
export type CountName = (typeof countNames)[number];

/** The count of a trial so far; null where nothing is entered yet. */
export interface Counting {
  readonly laps: number | null;
  readonly extra: number | null;
  readonly touches: number | null;
  /** The question that the next digit answers. */
  readonly at: CountName;
  /** True if somebody typed four or more quadrants. */
  readonly tooMany: boolean;
  /** True while it is asked whether the whole count is right. */
  readonly asked: boolean;
}

/** A completely counted trial. */
export interface Count {
  readonly laps: number;
  readonly extra: number;
  readonly touches: number;
}

/** Returns the count at the whistle: the landings and touches tapped while the clock ran. */
export function countingOf(trial: NonNullable<AgilityLane["trial"]>): Counting {
  const tapped = trial.landings > 0;
  return {
    laps: tapped ? trial.laps : null,
    extra: tapped ? trial.extra : null,
    touches: trial.touches > 0 ? trial.touches : null,
    at: tapped ? "touches" : "laps",
    ...plain,
  };
}

/** What a count is that was just changed. */
const plain = { tooMany: false, asked: false } as const;

/** Answers the question with a digit, and goes on to the next one. */
export function typeDigit(counting: Counting, digit: number): Counting {
  if (digit > mostOfCounts[counting.at]) return { ...counting, tooMany: true };
  return { ...counting, [counting.at]: digit, at: after(counting.at), ...plain };
}

/** Changes a count by one; four quadrants more would be a lap, so they stay below. */
export function stepBy(counting: Counting, name: CountName, by: 1 | -1): Counting {
  const value = Math.min(mostOfCounts[name], Math.max(0, (counting[name] ?? 0) + by));
  return { ...counting, [name]: value, at: name, ...plain };
}

/** Adds a line touch that was seen late, whatever is being answered. */
export function addTouch(counting: Counting): Counting {
  const touches = Math.min(mostOfCounts.touches, (counting.touches ?? 0) + 1);
  return { ...counting, touches, ...plain };
}

export function goTo(counting: Counting, name: CountName): Counting {
  return { ...counting, at: name, ...plain };
}

/** Goes on to the next question; a skipped count is 0. */
export function goOn(counting: Counting): Counting {
  return { ...counting, [counting.at]: counting[counting.at] ?? 0, at: after(counting.at), ...plain };
}

export function goBack(counting: Counting): Counting {
  const before = countNames[countNames.indexOf(counting.at) - 1] ?? "laps";
  return { ...counting, at: before, ...plain };
}

/** Returns the whole count; null while something is open. A trial without a lap or a quadrant was no trial. */
export function countOf({ laps, extra, touches }: Counting): Count | null {
  if (laps === null || extra === null || touches === null) return null;
  return { laps, extra, touches };
}

export function isLast(name: CountName): boolean {
  return name === countNames.at(-1);
}

function after(name: CountName): CountName {
  return countNames[countNames.indexOf(name) + 1] ?? name;
}
