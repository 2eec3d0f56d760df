import type { ZodType } from "zod";

/**
 * A tap of a heat: made once, never changed. `atMs` counts whole milliseconds from the heat's time 0 on the monotonic
 * clock of whoever tapped, so that no delay on the way changes a time; below 0 is the count-in.
 */
export interface Tap {
  /** Made by the client, so that a retry is known. */
  readonly id: string;
  /** Null: every lane. */
  readonly lane: number | null;
  readonly atMs: number;
}

export interface What {
  readonly kind: string;
  readonly detail: unknown;
}

/**
 * ready: waits for the start, or for the first tap; going; done: has its result; aside: takes no (further) part.
 */
type Phase = "ready" | "going" | "done" | "aside";

/** An attempt that a lane came to. `key` tells those of one lane apart; the same taps give the same key. */
export interface LaneResult<Attempt = unknown> {
  readonly key: string;
  readonly seen: Attempt;
}

/** What every test's lane has. A lane's results depend on its taps alone, never on the moment of looking. */
export interface LaneState<Attempt = unknown> {
  readonly phase: Phase;
  readonly results: readonly LaneResult<Attempt>[];
}

/** When a lane is looked at: ms since time 0; null before the start. */
export type Elapsed = number | null;

/**
 * How one test is run live. `Kept` is what the taps of a lane amount to; `show` adds what only the moment of looking
 * tells (a running count, the stage at hand).
 */
export interface LiveTest<Parameters, Attempt, Own extends What, Kept, State extends LaneState<Attempt>> {
  /**
   * common: all lanes start at once, and are fixed from then on; own: each lane has its own pace, the heat runs from
   * its gathering on, and a lane is fixed by its first tap.
   */
  readonly clock: "common" | "own";
  /** From the start tap to time 0. */
  countInMs(parameters: Parameters): number;
  /** Kind and detail of the test's own taps. */
  readonly what: ZodType<Own>;
  empty(parameters: Parameters, prior: readonly Attempt[]): Kept;
  /** What is kept after one more tap; the same object when the tap changes nothing. */
  step(kept: Kept, tap: Tap & Own, parameters: Parameters): Kept;
  show(kept: Kept, parameters: Parameters, elapsed: Elapsed): State;
}
