import jstat from "jstat";
import { type Icc, intraclass } from "./agreement.ts";
import { upperShare } from "./interval.ts";
import type { TwoWay } from "./two-way.ts";

/** Into how many equally likely parts each of the three distributions is divided. */
const parts = { athletes: 40, series: 40, rest: 10 } as const;

/**
 * Returns ICC(2,1) with a generalised confidence interval: what the three variances may be, given the mean squares, is
 * followed through the coefficient. The usual interval (McGraw & Wong 1996) holds as little as 75 % where two columns (judges,
 * or visits to a test that teaches) differ by more than the rest; this one holds about 95 % there too. Null where no two
 * values differ.
 * Source: Weerahandi 1993, Journal of the American Statistical Association 88, 899–905; for this coefficient Tian &
 * Cappelleri 2004, Statistics in Medicine 23, 2125–2135 (both from memory). In place of drawing at random, each χ² is
 * taken at the middles of equally likely parts.
 */
export function iccOf(table: TwoWay, level = 0.95): Icc | null {
  const usual = intraclass(table, 2, "single", level);
  if (usual === null) return null;
  const values = possibleValues(table).sort();
  const at = (share: number) =>
    values[Math.min(values.length - 1, Math.floor(share * values.length))] ?? usual.value;
  const upper = upperShare(level);
  return { value: usual.value, low: at(1 - upper), high: at(upper) };
}

/** Returns the coefficient at every combination of what the three mean squares may stand for. */
function possibleValues({ subjects: n, repeats: k, between, columns, error }: TwoWay): Float64Array {
  const ofRest = expectedSquares(error, (n - 1) * (k - 1), parts.rest);
  const ofAthletes = expectedSquares(between, n - 1, parts.athletes);
  const ofSeries = expectedSquares(columns, k - 1, parts.series);
  const values = ofRest.flatMap((rest) =>
    ofAthletes.flatMap((athletes) => {
      const wanted = Math.max(0, (athletes - rest) / k);
      return ofSeries.map((series) => shareOf(wanted, Math.max(0, (series - rest) / n) + rest));
    }),
  );
  return Float64Array.from(values);
}

function shareOf(wanted: number, other: number): number {
  return wanted + other === 0 ? 1 : wanted / (wanted + other);
}

/** Returns what a mean square may be the estimate of: equally likely values. */
function expectedSquares(square: number, degrees: number, count: number): number[] {
  return quantilesOfChiSquared(degrees, count).map((each) => (square * degrees) / each);
}

const kept = new Map<string, readonly number[]>();

/** Returns the middles of equally likely parts of χ²; worked out once for each degrees of freedom. */
function quantilesOfChiSquared(degrees: number, count: number): readonly number[] {
  const key = `${degrees} ${count}`;
  const known = kept.get(key);
  if (known !== undefined) return known;
  const made = Array.from({ length: count }, (_, at) => jstat.chisquare.inv((at + 0.5) / count, degrees));
  kept.set(key, made);
  return made;
}
