import { normalQuantile } from "./normal.ts";

/** Coefficients of Lanczos's approximation of the gamma function with g = 7 and nine terms (Godfrey 2001). */
const lanczos = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
  12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
];

/** ln Γ(x) for x ≥ ½. */
function logGamma(x: number): number {
  const z = x - 1;
  const sum = lanczos.reduce((all, each, index) => all + (index === 0 ? each : each / (z + index)), 0);
  const base = z + 7.5;
  return Math.log(Math.sqrt(2 * Math.PI) * sum) + (z + 0.5) * Math.log(base) - base;
}

/** The step of the continued fraction below zero that counts as one above it (Lentz 1976). */
const least = 1e-300;
const apart = (value: number) => (Math.abs(value) < least ? least : value);

/** Iₓ(a, b) where x is below about (a + 1) / (a + b + 2): the continued fraction converges fast there. */
function betaBelow(x: number, a: number, b: number): number {
  const front = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x));
  let c = 1;
  let d = 1 / apart(1 - ((a + b) * x) / (a + 1));
  let fraction = d;
  for (let step = 1; step < 10_000; step += 1) {
    const even = (step * (b - step) * x) / ((a + 2 * step - 1) * (a + 2 * step));
    d = 1 / apart(1 + even * d);
    c = apart(1 + even / c);
    fraction *= d * c;
    const odd = (-(a + step) * (a + b + step) * x) / ((a + 2 * step) * (a + 2 * step + 1));
    d = 1 / apart(1 + odd * d);
    c = apart(1 + odd / c);
    fraction *= d * c;
    if (Math.abs(d * c - 1) < 1e-15) break;
  }
  return (front * fraction) / a;
}

/** The share of Student's t distribution beyond a `value` of 0 or more, on one side. */
function beyond(value: number, degrees: number): number {
  if (value === 0) return 0.5;
  const square = value * value;
  const x = degrees / (degrees + square);
  const [a, b] = [degrees / 2, 0.5];
  const isBelow = x < (a + 1) / (a + b + 2);
  return isBelow ? betaBelow(x, a, b) / 2 : (1 - betaBelow(square / (degrees + square), b, a)) / 2;
}

/**
 * Returns the share of Student's t distribution below `value`; degrees of freedom need not be whole. By the incomplete
 * beta function and its continued fraction: Abramowitz & Stegun 1964, 26.7.1 and 26.5.8.
 */
export function shareOfT(value: number, degrees: number): number {
  return value < 0 ? beyond(-value, degrees) : 1 - beyond(value, degrees);
}

/** Returns the value below which the share `p` of Student's t distribution lies, by bisection. Infinite at 0 and 1. */
export function quantileOfT(p: number, degrees: number): number {
  if (!(p >= 0 && p <= 1)) return Number.NaN;
  if (p < 0.5) return -quantileOfT(1 - p, degrees);
  if (p === 1) return Number.POSITIVE_INFINITY;
  // Its tails are longer than those of the normal distribution.
  let low = Math.max(0, normalQuantile(p) - 1e-9);
  let high = low + 1;
  while (shareOfT(high, degrees) < p) high = low + 2 * (high - low);
  for (let step = 0; step < 100 && high - low > 1e-14 * high; step += 1) {
    const middle = (low + high) / 2;
    if (shareOfT(middle, degrees) < p) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
