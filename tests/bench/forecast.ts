import { type Calibration, calibrationOf, forecasted, parts } from "../checks/plan/calibration.ts";

/** The bars: how often the span holds the true end, and minutes that the middle is off on average. */
const leastHeld = 0.75;
const mostHeld = 0.88;
const mostError = 5;

/** Two seeds of halls; the model's numbers were set while looking at the first, and nothing was set on the other. */
const seeds = ["tune", "sixth"];

/** One line of the table of forecasts. */
interface ForecastLine extends Calibration {
  readonly part: number;
  readonly isKept: boolean;
}

/**
 * Holds the forecast of the day's end against halls that were simulated apart from it, at four parts of each day, beside the
 * pace of the last half hour on the same halls.
 */
function forecastBench(seed: string, halls: number): ForecastLine[] {
  const all = forecasted(seed, halls);
  return parts.map((part) => {
    const line = calibrationOf(all.filter((each) => each.part === part));
    const isKept = line.held >= leastHeld && line.held <= mostHeld && Math.abs(line.error) <= mostError;
    return { part, ...line, isKept };
  });
}

/** Returns the table as text. @param halls of each seed */
export function forecastLines(halls = 200): string[] {
  return seeds.flatMap((seed) => [`halls of the seed “${seed}”:`, ...forecastBench(seed, halls).map(lineOf)]);
}

function lineOf({ part, held, error, absolute, width, atPace, isKept }: ForecastLine): string {
  return (
    `  at ${percent(part)} of the day: held ${percent(held)}, middle ${minutes(error)} (${absolute.toFixed(1)} either way), ` +
    `${width.toFixed(0)} min wide (${isKept ? "kept" : "NOT KEPT"}); at the pace of half an hour ${minutes(atPace.error)} ` +
    `(${atPace.absolute.toFixed(1)} either way, told in ${atPace.told} halls)`
  );
}

function percent(share: number): string {
  return `${(100 * share).toFixed(1)} %`;
}

function minutes(value: number): string {
  return `${value > 0 ? "+" : ""}${value.toFixed(1)} min`;
}
