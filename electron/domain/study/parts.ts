import type { TwoWay } from "../statistics/two-way.ts";

/** One part of the variance, in squared grains; `belowZero`: the estimate was below nought and counts as nought. */
export interface VariancePart {
  readonly variance: number;
  readonly belowZero: boolean;
}

/** What readings differ by: the athletes, the series as a whole (a judge, a visit), and the rest. */
export interface VarianceParts {
  readonly athletes: VariancePart;
  readonly series: VariancePart;
  readonly rest: VariancePart;
}

/**
 * Returns the components of variance of a two-way random model without replication, from its mean squares.
 * Source: Shrout & Fleiss 1979, Psychological Bulletin 86(2), 420–428; expected mean squares of their case 2.
 */
export function varianceParts({ subjects, repeats, between, columns, error }: TwoWay): VarianceParts {
  return {
    athletes: partOf((between - error) / repeats),
    series: partOf((columns - error) / subjects),
    rest: partOf(error),
  };
}

function partOf(variance: number): VariancePart {
  return { variance: Math.max(0, variance), belowZero: variance < 0 };
}
