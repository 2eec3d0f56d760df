import { type Anchor, createHeatClock, type HeatClock } from "../../../../sound/clock.ts";

const clocks = new Map<string, HeatClock>();
const listeners = new Set<() => void>();

/** Sets a heat's clock; the more certain anchor is kept, in whatever order they come. */
export function settleClock(heatId: string, anchor: Anchor): void {
  const kept = clocks.get(heatId);
  if (kept === undefined) clocks.set(heatId, createHeatClock(anchor));
  else kept.settle(anchor);
  for (const listener of listeners) listener();
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
