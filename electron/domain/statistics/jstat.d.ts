/** The part of jstat, which has no types of its own, that this room uses: inverses of two distributions. */
declare module "jstat" {
  interface Distributions {
    /** The value below which the share `p` of an F distribution lies; degrees of freedom need not be whole. */
    readonly centralF: { inv(p: number, above: number, below: number): number };
    readonly chisquare: { inv(p: number, degrees: number): number };
  }
  const jstat: Distributions;
  export default jstat;
}
