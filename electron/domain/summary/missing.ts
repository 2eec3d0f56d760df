import type { TestCode } from "../tests/registry.ts";
import type { SummaryPerson } from "./day.ts";
import type { Gap } from "./gaps.ts";
import type { RollRow } from "./roll.ts";

/** The tests that one athlete lacks for the same reason. */
export interface Missing extends Gap {
  readonly who: SummaryPerson;
  /** In the day's order. */
  readonly tests: readonly TestCode[];
}

/** Returns missing tests by league and name, one row per athlete and reason. */
export function missingRows(roll: readonly RollRow[]): Missing[] {
  return roll.flatMap(({ who, tests }) => {
    const gaps = tests.flatMap(({ test, gap }) => (gap === null ? [] : [{ test, gap }]));
    const alike = Map.groupBy(gaps, ({ gap }) => JSON.stringify(gap));
    return [...alike.values()].flatMap((some) => {
      const [first] = some;
      return first === undefined ? [] : [{ ...first.gap, who, tests: some.map(({ test }) => test) }];
    });
  });
}
