import { holdTogether } from "../statistics/holm.ts";
import { normalShare } from "../statistics/normal.ts";
import { quantile } from "../statistics/quantile.ts";
import { shareOfT } from "../statistics/student.ts";

/**
 * How a hall's results in one test compare with all others', added up over the groups of its athletes (category, age
 * band), each weighted by n / (n + 1) of its marks n (van Elteren 1960, Bulletin of the International Statistical
 * Institute 37). Within a group it is the rank-sum of Wilcoxon and of Mann and Whitney with its correction for ties,
 * on places from 0 to 1.
 */
export interface HallInTest<Test = string> {
  readonly hall: number;
  readonly test: Test;
  /** Σ places of its marks, above what chance gives on average. */
  readonly above: number;
  /** The variance that chance gives to it. */
  readonly variance: number;
  /** Weighted number of its marks, by which a difference of its mean place comes into `above`. */
  readonly size: number;
}

/** A hall whose results in a test differ from all others' by more than halls differ. */
export interface DifferingHall<Test = string> {
  readonly hall: number;
  readonly test: Test;
  /** Mean place of its results among all, as a difference from the middle: −0.5 to 0.5; below 0 its values are lower. */
  readonly off: number;
}

/** Chance with which any hall is named when none truly differs. */
const mistakes = 0.05;
/** Values so near to the middle have a chance above `mistakes`, by the normal distribution and more so by Student's t. */
const usual = 1.95;
/** Median of the square of a standard normal value. */
const medianOfSquares = 0.4549;

/** Returns the halls that differ, of all tests together (Holm), in the order given. */
export function differingHalls<Test>(halls: readonly HallInTest<Test>[]): DifferingHall<Test>[] {
  const judged: HallInTest<Test>[] = [];
  const chances: number[] = [];
  for (const alike of Map.groupBy(halls, ({ test }) => test).values()) {
    const usable = alike.filter(({ variance }) => variance > 0);
    if (usable.length < 3) continue;
    const apart = honestDifference(usable);
    for (const hall of usable) {
      judged.push(hall);
      chances.push(chanceOf(standardised(hall, apart), apart, usable.length));
    }
  }
  const holds = holdTogether(chances, mistakes);
  return judged
    .filter((_hall, index) => holds[index])
    .map(({ hall, test, above, size }) => ({ hall, test, off: above / size }));
}

/**
 * How much a variance that is estimated by a median is worth, as a share of one by all values: the efficiency of the
 * median absolute deviation (Rousseeuw & Croux 1993, Journal of the American Statistical Association 88(424)).
 */
const worthOfMedian = 0.37;

/**
 * Returns the chance of a value as far off as this one: by Student's t where halls had to say how far apart they lie. For
 * most it is above `mistakes`, which no finding survives, and is told as 1 without working it out.
 */
function chanceOf(value: number, apart: number, halls: number): number {
  const off = -Math.abs(value);
  if (off > -usual) return 1;
  return 2 * (apart === 0 ? normalShare(off) : shareOfT(off, worthOfMedian * (halls - 1)));
}

function standardised({ above, variance, size }: HallInTest<unknown>, apart: number): number {
  return above / Math.sqrt(variance + apart * size * size);
}

/**
 * Returns the variance of halls' mean places that is usual: halls are honest and differ all the same, in who comes and
 * how strictly is judged. It is what brings the median of the squared standardised values down to that of chance, which a
 * few halls can't move (as genomic control does: Devlin & Roeder 1999, Biometrics 55(4)); as a variance of its own beside
 * that of chance, since it weighs more in large halls (Paule & Mandel 1982, Journal of Research of the NBS 87(5)).
 */
function honestDifference(halls: readonly HallInTest<unknown>[]): number {
  // A value is usual from the difference on that makes its own square the median of chance: the median of those differences
  // is what is looked for, without a search.
  const needed = halls.map(
    ({ above, variance, size }) => (above ** 2 / medianOfSquares - variance) / size ** 2,
  );
  // Places lie between 0 and 1, so their means never vary by more than a quarter.
  return Math.min(Math.max(quantile(needed, 0.5), 0), 0.25);
}
