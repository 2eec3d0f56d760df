import type { LengthUnit } from "../tests/protocol.ts";
import { definitionOf, type TestCode } from "../tests/registry.ts";
import { type TypicalError, type Verdict, verdict } from "./change.ts";

/**
 * Returns the first mark (grains) better than `from` that can be read and has at least this verdict; null when there is
 * none, because a time can't be negative or the noise is as large as the mark.
 * @param hall see `changeBetween`
 */
export function firstMarkJudged(
  test: TestCode,
  from: number,
  wanted: "likely gain" | "clear gain",
  error: TypicalError,
  lengths: LengthUnit,
  hall = 0,
): number | null {
  const { protocol, figures } = definitionOf(test);
  const reading = figures.reading(lengths);
  const towards = protocol.better === "higher" ? reading : -reading;
  // The nearest reading that is no better: the middle of a day's marks need be none.
  const start = (towards > 0 ? Math.floor(from / reading) : Math.ceil(from / reading)) * reading;
  const enough: readonly Verdict[] = wanted === "clear gain" ? [wanted] : [wanted, "clear gain"];
  const reaches = (steps: number) =>
    enough.includes(verdict(test, from, start + steps * towards, error, hall));
  // A better mark never gets a worse verdict, so bisection finds the first.
  let below = 0;
  let above = Math.floor((towards > 0 ? 3 * start : start) / reading) + (towards > 0 ? 1000 : 0);
  if (!reaches(above)) return null;
  while (above - below > 1) {
    const middle = Math.floor((below + above) / 2);
    if (reaches(middle)) above = middle;
    else below = middle;
  }
  return start + above * towards;
}
