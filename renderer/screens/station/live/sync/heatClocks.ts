import {
  type Anchor,
  type Answered,
  anchorOfAnswer,
  createHeatClock,
  type HeatClock,
} from "../../../../sound/clock.ts";
import type { LiveHeat } from "../../../../tests/live/types.ts";

const clocks = new Map<string, HeatClock>();
const listeners = new Set<() => void>();

/** Sets a heat's clock; the more certain anchor is kept, in whatever order they come. */
export function settleClock(heatId: string, anchor: Anchor): void {
  const kept = clocks.get(heatId);
  if (kept === undefined) clocks.set(heatId, createHeatClock(anchor));
  else kept.settle(anchor);
  for (const listener of listeners) listener();
}

/** Sets a heat's clock by an answer of the table, if the heat runs. */
export function settleFrom(
  heatId: string,
  { elapsedMs, startDoubtMs }: Pick<LiveHeat, "elapsedMs" | "startDoubtMs">,
  { askedAt, answeredAt }: Pick<Answered, "askedAt" | "answeredAt">,
): void {
  if (elapsedMs === null) return;
  const anchor = anchorOfAnswer({ elapsedMs, askedAt, answeredAt });
  settleClock(heatId, { ...anchor, doubtMs: anchor.doubtMs + (startDoubtMs ?? 0) });
}

/** Calls `listener` whenever a heat's clock may have become more certain. */
export function followClocks(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** Returns a heat's clock, the same object for as long as the window lives; null before anything is known of it. */
export function clockOfHeat(heatId: string): HeatClock | null {
  return clocks.get(heatId) ?? null;
}

/** Returns the possible error of a heat's clock, in ms. */
export function doubtOf(heatId: string): number {
  return clocks.get(heatId)?.doubtMs() ?? Number.POSITIVE_INFINITY;
}
