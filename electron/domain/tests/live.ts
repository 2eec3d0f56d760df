import type { ZodMiniType } from "zod/mini";

/**
 * A tap of a heat: made once, never changed. `atMs` counts whole milliseconds from the heat's time 0 on the tapper's
 * monotonic clock, so that no delay on the way changes a time; the count-in is below 0.
 */
export interface Tap {
  /** Made by the client, so that a retry is recognised. */
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
 * The phase of a lane. ready: waits for the start, or for the first tap; going; done: has its result; aside: takes no
 * (further) part.
 */
type Phase = "ready" | "going" | "done" | "aside";

/** An attempt made by a lane. `key` distinguishes those of one lane; the same taps give the same key. */
export interface LaneResult<Attempt = unknown> {
  readonly key: string;
  readonly seen: Attempt;
}

/** The state common to every test's lanes. Results depend on the taps alone, never on the moment of looking. */
export interface LaneState<Attempt = unknown> {
  readonly phase: Phase;
  readonly results: readonly LaneResult<Attempt>[];
}

/** The moment of looking at a lane: ms since time 0; null before the start. */
export type Elapsed = number | null;

/**
 * A test's live run. `Kept` is the state folded from a lane's taps; `show` adds what depends on the moment of looking
 * (a running count, the current stage).
 */
export interface LiveTest<Parameters, Attempt, Own extends What, Kept, State extends LaneState<Attempt>> {
  /**
   * common: all lanes start at once, and are fixed from then on. own: each lane has its own pace, the heat runs from
   * its gathering on, and a lane is fixed by its first tap.
   */
  readonly clock: "common" | "own";
  /** Returns the ms from the start tap to time 0. */
  countInMs(parameters: Parameters): number;
  /** Schema of the kind and detail of the test's own taps. */
  readonly what: ZodMiniType<Own>;
  empty(parameters: Parameters, prior: readonly Attempt[]): Kept;
  /** Returns the state after one more tap; the same object when the tap changes nothing. */
  step(kept: Kept, tap: Tap & Own, parameters: Parameters): Kept;
  show(kept: Kept, parameters: Parameters, elapsed: Elapsed): State;
}
