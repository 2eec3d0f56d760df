import { z } from "zod";
import type { Tap, What } from "../tests/live.ts";

/** Most lanes that one station can have. */
export const mostLanes = 12;

/** Time in which the last tap can be undone, in ms; later it takes a correction, with a reason. */
export const undoMs = 10_000;

/** The tap that every test has besides its own: the lane's athlete takes no (further) part. */
const asideShape = z.object({ kind: z.literal("aside"), detail: z.object({}) });
/** Undoes another tap. `undoTrouble` checks before storing whether it still may. */
const undoShape = z.object({ kind: z.literal("undo"), detail: z.object({ eventId: z.string() }) });
/** Not a tap at all: somebody looked at a doubtful result again and found it right. It changes no lane. */
const sureShape = z.object({
  kind: z.literal("sure"),
  detail: z.object({ attemptIds: z.array(z.string()) }),
});
export const commonWhat = z.discriminatedUnion("kind", [asideShape, undoShape, sureShape]);

/** True for what no window sends as a tap: it has a procedure of its own. */
export function isNoTap({ kind }: What): boolean {
  return kind === "undo" || kind === "sure";
}

/** A tap with its content: `kind` and `detail` as `readWhat` reads them. */
export type HeatEvent = Tap & What;

/** A lane with its number and its taps without effect (a stop after the end, a double press). */
export type FoldedLane<State> = State & { readonly lane: number; readonly idle: readonly string[] };

/** A lane to fold. `prior` are today's standing attempts of the test from outside this heat. */
export interface LaneInput<Attempt = unknown> {
  readonly lane: number;
  readonly prior: readonly Attempt[];
}

/** Sorts taps by time; of one moment, in the order given. */
export function inTime<Timed extends Tap>(taps: readonly Timed[]): Timed[] {
  return taps.toSorted((a, b) => a.atMs - b.atMs);
}

/** Returns the taps without undone ones, and without what is no tap. */
export function standingTaps(events: readonly HeatEvent[]): HeatEvent[] {
  const back = new Set(events.map(undoneBy));
  return events.filter((event) => !isNoTap(event) && !back.has(event.id));
}

/** Returns the tap that an event undoes; null for all but an undo. */
export function undoneBy(event: HeatEvent): string | null {
  return isUndo(event) ? event.detail.eventId : null;
}

function isUndo(event: What): event is z.infer<typeof undoShape> {
  return event.kind === "undo";
}
