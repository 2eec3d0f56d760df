import type { Spread, Station } from "./hall.ts";

/** Means of the largest of k standard normal values, k from 1. Source: Teichroew 1956, Annals of Mathematical Statistics 27 (from memory). */
const largest = [0, 0.5642, 0.8463, 1.0294, 1.163, 1.2672, 1.3522, 1.4236, 1.485, 1.5388, 1.5864, 1.6292];

/** Returns the mean of a lognormal time. */
export function meanOf({ median, sigma }: Spread): number {
  return median * Math.exp(sigma ** 2 / 2);
}

/**
 * Returns how long a place is taken on average by so many who start together: the slowest of them, and the change-over.
 * The slowest is taken as lognormal with the middle of the largest of k logarithms, which is close for what stations vary.
 */
export function meanCycle({ turn, changeOver }: Station, athletes: number): number {
  const most = largest[Math.min(athletes, largest.length) - 1] ?? 0;
  const narrower = athletes > 1 ? 0.6 : 1;
  const slowest = turn.median * Math.exp(turn.sigma * most + (narrower * turn.sigma) ** 2 / 2);
  return slowest + meanOf(changeOver);
}
