import { definitionOf, type TestCode } from "../tests/registry.ts";
import { type TypicalError, type Verdict, verdict } from "./change.ts";

/**
 * Returns the first mark (grains) better than `from` with at least this verdict; null when there is none, because a
 * time can't be negative or the noise is as large as the mark.
 */
export function firstMarkJudged(
  test: TestCode,
  from: number,
  wanted: "likely gain" | "clear gain",
  error: TypicalError,
): number | null {
  const { protocol, figures } = definitionOf(test);
  const step = figures.reading;
  const towards = protocol.better === "higher" ? step : -step;
  const enough: readonly Verdict[] = wanted === "clear gain" ? [wanted] : [wanted, "clear gain"];
  const reaches = (steps: number) => enough.includes(verdict(test, from, from + steps * towards, error));
  // A better mark never gets a worse verdict, so bisection finds the first.
  let below = 0;
  let above = Math.floor((towards > 0 ? 3 * from : from) / step) + (towards > 0 ? 1000 : 0);
  if (!reaches(above)) return null;
  while (above - below > 1) {
    const middle = Math.floor((below + above) / 2);
    if (reaches(middle)) above = middle;
    else below = middle;
  }
  return from + above * towards;
}
