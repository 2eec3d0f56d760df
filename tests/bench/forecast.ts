import { type Calibration, calibrationOf, forecasted, parts } from "../checks/plan/calibration.ts";

/** The bars: how often the span holds the true end, and minutes that the middle is off on average. */
const leastHeld = 0.75;
const mostHeld = 0.88;
const mostError = 5;

/** One line of the table of forecasts. */
export interface ForecastLine extends Calibration {
  readonly part: number;
  readonly isKept: boolean;
}

/**
 * Holds the forecast of the day's end against halls that were simulated apart from it, at four parts of each day, beside the
 * pace of the last half hour on the same halls.
 */
export function forecastBench(seed: string, halls: number): ForecastLine[] {
  const all = forecasted(seed, halls);
  return parts.map((part) => {
    const line = calibrationOf(all.filter((each) => each.part === part));
    const isKept = line.held >= leastHeld && line.held <= mostHeld && Math.abs(line.error) <= mostError;
    return { part, ...line, isKept };
  });
}
