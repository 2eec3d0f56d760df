/** Returns the density of the standard normal distribution. */
function density(x: number): number {
  return Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI);
}

/** Φ(x) − ½ for small |x|: φ(x)·(x + x³/3 + x⁵/(3·5) + …), every term of the same sign. */
function fromMiddle(x: number): number {
  let term = x;
  let sum = x;
  for (let odd = 3; sum + term !== sum; odd += 2) {
    term *= (x * x) / odd;
    sum += term;
  }
  return density(x) * sum;
}

/** 1 − Φ(x) for large x by Laplace's continued fraction φ(x)/(x + 1/(x + 2/(x + 3/(x + …)))). */
function beyond(x: number): number {
  let fraction = x;
  for (let step = 200; step >= 1; step -= 1) fraction = x + step / fraction;
  return density(x) / fraction;
}

/**
 * Returns Φ(x), the share of a standard normal distribution below `x`. Accurate to about 1e-14 in the middle and
 * relatively so in the tails. Source: the series and the continued fraction of Abramowitz & Stegun 1964, 26.2.11 and
 * 26.2.14 (numbers from memory).
 */
export function normalShare(x: number): number {
  if (Number.isNaN(x)) return Number.NaN;
  if (x < -3) return beyond(-x);
  if (x > 3) return 1 - beyond(x);
  return 0.5 + fromMiddle(x);
}

/**
 * Returns Φ⁻¹(share) by Newton's method on ln Φ. Infinite at 0 and 1. ln Φ is concave and Φ(−t) ≤ ½·e^(−t²/2), so that it
 * begins below the quantile and climbs to it without ever passing it, in some five steps: it ends where a step no longer climbs.
 */
export function normalQuantile(share: number): number {
  if (!(share >= 0 && share <= 1)) return Number.NaN;
  if (share === 0) return Number.NEGATIVE_INFINITY;
  if (share > 0.5) return -normalQuantile(1 - share);
  let quantile = -Math.sqrt(-2 * Math.log(2 * share));
  for (;;) {
    const below = normalShare(quantile);
    const next = quantile - (Math.log(below / share) * below) / density(quantile);
    if (!(next > quantile)) return quantile;
    quantile = next;
  }
}
