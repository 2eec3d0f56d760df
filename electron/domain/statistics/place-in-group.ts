import { definitionOf, type TestCode } from "../tests/registry.ts";
import { reachOf, startingTypicalErrors, type TypicalError } from "./change.ts";
import type { PlaceBand } from "./place.ts";
import { boundsWithinEnds, withinEnds } from "./place-ends.ts";
import { type GroupInPercentiles, placeInPercentiles } from "./place-in-percentiles.ts";

/**
 * Returns the place of a mark of a test (grains) in a group of a reference table, with what the athlete varies by
 * themselves; marks beyond the end of the test are equal. Null with fewer than twenty marks.
 */
export function placeIn(
  test: TestCode,
  value: number,
  group: GroupInPercentiles,
  error: TypicalError = startingTypicalErrors[test],
): PlaceBand | null {
  const { protocol, figures } = definitionOf(test);
  const percentiles = group.percentiles.map((each) => boundsWithinEnds(each, figures.ends));
  return placeInPercentiles(
    protocol.better,
    withinEnds(value, figures.ends),
    { ...group, percentiles },
    protocol.equalWithin,
    reachOf(test, value, error),
  );
}
