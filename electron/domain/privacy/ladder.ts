import type { TestCode } from "../protocols/protocol.ts";

/** The steps to which the marks of one test may be coarsened, in its grains, and the range that losses are measured on. */
export interface Ladder {
  /** Fine to coarse. A step's lines are its whole multiples from 0, on every day and in every hall the same. */
  readonly steps: readonly [number, ...number[]];
  /** The one step of linked profiles, whose marks are told in two or three parts only. */
  readonly profileStep: number;
  /** Where nearly every mark lies (the range outside which a station asks "sure?"); a share of it is what a step loses. */
  readonly usual: readonly [from: number, to: number];
}

/**
 * Fixed, so that steps compare between days and nothing about a day can be read from where its lines lie. The figures are
 * ours. Grains: reps, quarter landings, millimetres, seconds, milliseconds.
 */
export const ladders: Readonly<Record<TestCode, Ladder>> = Object.freeze({
  "push-up": { steps: [1, 2, 5, 10, 20], profileStep: 5, usual: [1, 80] },
  agility: { steps: [2, 4, 8, 20, 40], profileStep: 8, usual: [48, 180] },
  vertical: { steps: [20, 50, 100, 200], profileStep: 50, usual: [100, 750] },
  core: { steps: [5, 10, 30, 60, 120], profileStep: 30, usual: [15, 600] },
  endurance: {
    steps: [5000, 10_000, 30_000, 60_000, 120_000],
    profileStep: 30_000,
    usual: [120_000, 900_000],
  },
});
