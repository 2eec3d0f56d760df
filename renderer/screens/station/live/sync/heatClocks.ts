import { type Anchor, createHeatClock, type HeatClock } from "../../../../sound/clock.ts";

interface Kept {
  readonly clock: HeatClock;
  doubtMs: number;
}

const clocks = new Map<string, Kept>();

/** Sets a heat's clock; the more certain anchor is kept, in whatever order they come. */
export function settleClock(heatId: string, anchor: Anchor): void {
  const kept = clocks.get(heatId);
  if (kept === undefined) {
    clocks.set(heatId, { clock: createHeatClock(anchor), doubtMs: anchor.doubtMs });
    return;
  }
  kept.clock.settle(anchor);
  kept.doubtMs = Math.min(kept.doubtMs, anchor.doubtMs);
}

/** Returns a heat's clock, the same object for as long as the window lives; null before anything is known of it. */
export function clockOfHeat(heatId: string): HeatClock | null {
  return clocks.get(heatId)?.clock ?? null;
}

/** Returns the possible error of a heat's clock, in ms. */
export function doubtOf(heatId: string): number {
  return clocks.get(heatId)?.doubtMs ?? Number.POSITIVE_INFINITY;
}
