import jstat from "jstat";

/** Returns the share of Student's t distribution below `value`; degrees of freedom need not be whole. */
export function shareOfT(value: number, degrees: number): number {
  return jstat.studentt.cdf(value, degrees);
}

/** Returns the value below which the share `p` of Student's t distribution lies. */
export function quantileOfT(p: number, degrees: number): number {
  return jstat.studentt.inv(p, degrees);
}
