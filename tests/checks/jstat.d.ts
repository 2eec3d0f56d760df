/** What the checks hold against jstat, which has no types of its own. */
declare module "jstat" {
  const jstat: {
    readonly normal: {
      cdf(x: number, mean: number, sd: number): number;
      inv(p: number, mean: number, sd: number): number;
    };
    readonly studentt: {
      cdf(value: number, degrees: number): number;
      inv(p: number, degrees: number): number;
    };
    readonly centralF: { cdf(x: number, above: number, below: number): number };
    anovafscore(...groups: readonly (readonly number[])[]): number;
    tscore(value: number, sample: readonly number[]): number;
    stdev(values: readonly number[], sample: boolean): number;
  };
  export default jstat;
}
