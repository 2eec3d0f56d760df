import { quantileOfT } from "../statistics/student.ts";

/** What the results of a group and of its halls vary by. */
export interface GroupSpread {
  /** Marks that count, and halls that they are of. */
  readonly marks: number;
  readonly halls: number;
  /** Variance of the marks' places (0 to 1). */
  readonly variance: number;
  /** Σ (share of the marks · (mean place of the hall − ½))² over all halls. */
  readonly betweenHalls: number;
}

/** Half of a 95 % interval of a normal distribution, in standard errors. */
const usualReach = 1.96;

/**
 * Returns how many independent marks would say as much about a share of the group as these do: fewer than there are,
 * since those of one hall are alike, and since few halls say little about how far halls differ. The variance of a mean of
 * halls is estimated from the halls themselves, and divided by that of as many independent marks it is the design effect
 * (Kish 1965, Survey Sampling), which is never taken below 1. Student's t with one degree less than there are halls
 * widens an interval against the normal one, and what is as wide with independent marks is returned. From 1 to `marks`.
 */
export function countsAs({ marks, halls, variance, betweenHalls }: GroupSpread): number {
  if (halls < 2) return 1;
  const ofMean = (halls / (halls - 1)) * betweenHalls;
  const designEffect = variance === 0 ? 1 : Math.max(1, (ofMean * marks) / variance);
  const wider = Math.max(1, quantileOfT(0.975, halls - 1) / usualReach) ** 2;
  return Math.min(marks, Math.max(1, Math.floor(marks / (designEffect * wider))));
}
