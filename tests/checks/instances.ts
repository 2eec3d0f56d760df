import { readFileSync } from "node:fs";

/** A published hybrid flow shop: stages with places, and a row of times for each job. */
export interface Instance {
  readonly number: number;
  readonly places: readonly number[];
  readonly rows: readonly (readonly number[])[];
  /** The best makespan that is known. */
  readonly best: number;
  /** No makespan is below it. */
  readonly bound: number;
}

/** Best makespans and bounds that are published with them, or come of them: see instances/README.md. */
const known = [
  [955, 947],
  [909, 898],
  [963, 956],
  [1003, 999],
  [993, 990],
] as const;

/** The five published instances: jobs, stages and places first, then the times. */
export const instances: readonly Instance[] = known.map(([best, bound], at) => {
  const file = new URL(`instances/hybrid-flow-shop-50x5x3-${at + 1}.txt`, import.meta.url);
  const [jobs = 0, stages = 0, ...rest] = readFileSync(file, "utf8").trim().split(/\s+/).map(Number);
  const places = rest.slice(0, stages);
  const rows = Array.from({ length: jobs }, (_, job) => rest.slice(stages * (job + 1), stages * (job + 2)));
  return { number: at + 1, places, rows, best, bound };
});

/**
 * Returns the bound by stages: at each, all work and for each place the shortest way to it and on from it, shared by the places,
 * in whole units as all times are.
 */
export function stageBound({ places, rows }: Instance): number {
  const sum = (values: readonly number[]) => values.reduce((all, each) => all + each, 0);
  const bounds = places.map((count, stage) => {
    const least = (values: number[]) => sum(values.toSorted((a, b) => a - b).slice(0, count));
    const heads = least(rows.map((row) => sum(row.slice(0, stage))));
    const tails = least(rows.map((row) => sum(row.slice(stage + 1))));
    return Math.ceil((heads + sum(rows.map((row) => row[stage] ?? 0)) + tails) / count);
  });
  return Math.max(...bounds, ...rows.map(sum));
}
