/** The part of jstat, which has no types of its own, that this room uses: two distributions, and matrices. */
declare module "jstat" {
  interface Distributions {
    /** Degrees of freedom need not be whole. `inv`: the value below which the share `p` lies; `cdf`: the share below. */
    readonly centralF: {
      inv(p: number, above: number, below: number): number;
      cdf(value: number, above: number, below: number): number;
    };
    readonly chisquare: { inv(p: number, degrees: number): number };
    /** The inverse of a matrix, and the lower half of Cholesky's of one that is symmetric and positive. */
    inv(matrix: readonly (readonly number[])[]): number[][];
    cholesky(matrix: readonly (readonly number[])[]): number[][];
  }
  const jstat: Distributions;
  export default jstat;
}
