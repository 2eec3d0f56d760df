import { type ZodType, z } from "zod";

/** Lanes that one station can have. */
export const mostLanes = 12;

/** How long the last tap can be taken back; later it is a correction, with a reason. */
export const undoMs = 10_000;

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

/** What every test knows besides its own taps: whoever is in the lane takes no (further) part. */
const asideShape = z.object({ kind: z.literal("aside"), detail: z.object({}) });
/** Takes back another tap. Whether it still may is `undoTrouble`'s to say, before it is kept. */
const undoShape = z.object({ kind: z.literal("undo"), detail: z.object({ eventId: z.string() }) });
export const commonWhat = z.discriminatedUnion("kind", [asideShape, undoShape]);

export interface What {
  readonly kind: string;
  readonly detail: unknown;
}

/** A tap with what it says: `kind` and `detail` as `readWhat` reads them. */
export type HeatEvent = Tap & What;

/**
 * ready: waits for the start, or for the first tap; going; done: has its result; aside: takes no (further) part.
 */
export type Phase = "ready" | "going" | "done" | "aside";

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

/** A lane with its number and the taps that changed nothing (a stop after the end, a double press). */
export type FoldedLane<State> = State & { readonly lane: number; readonly idle: readonly string[] };

/** A lane to fold. `prior` are today's standing attempts of the test that other means than this heat made. */
export interface LaneInput<Attempt = unknown> {
  readonly lane: number;
  readonly prior: readonly Attempt[];
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

/** In the order of time; of one moment, in the order given. */
export function inTime<Timed extends Tap>(taps: readonly Timed[]): Timed[] {
  return taps.toSorted((a, b) => a.atMs - b.atMs);
}

/** The taps without those that were taken back, and without the taking back. */
export function standingTaps(events: readonly HeatEvent[]): HeatEvent[] {
  const back = new Set(events.map(undoneBy));
  return events.filter((event) => event.kind !== "undo" && !back.has(event.id));
}

/** The tap that an event takes back; null for all but an undo. */
export function undoneBy(event: HeatEvent): string | null {
  return isUndo(event) ? event.detail.eventId : null;
}

function isUndo(event: What): event is z.infer<typeof undoShape> {
  return event.kind === "undo";
}
