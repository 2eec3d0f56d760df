import { z } from "zod";
import type { Tap, What } from "../tests/live.ts";

/** Lanes that one station can have. */
export const mostLanes = 12;

/** How long the last tap can be taken back; later it is a correction, with a reason. */
export const undoMs = 10_000;

/** What every test knows besides its own taps: whoever is in the lane takes no (further) part. */
const asideShape = z.object({ kind: z.literal("aside"), detail: z.object({}) });
/** Takes back another tap. Whether it still may is `undoTrouble`'s to say, before it is kept. */
const undoShape = z.object({ kind: z.literal("undo"), detail: z.object({ eventId: z.string() }) });
export const commonWhat = z.discriminatedUnion("kind", [asideShape, undoShape]);

/** A tap with what it says: `kind` and `detail` as `readWhat` reads them. */
export type HeatEvent = Tap & What;

/** A lane with its number and the taps that changed nothing (a stop after the end, a double press). */
export type FoldedLane<State> = State & { readonly lane: number; readonly idle: readonly string[] };

/** A lane to fold. `prior` are today's standing attempts of the test that other means than this heat made. */
export interface LaneInput<Attempt = unknown> {
  readonly lane: number;
  readonly prior: readonly Attempt[];
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
