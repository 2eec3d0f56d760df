import { offsetOf } from "../../electron/domain/heats/offset.ts";

/**
 * A heat's clock in a window. The desk holds the true time: the store has the heat's start, and every answer says how
 * much time has passed since. The page bases that on its own monotonic clock (`performance.now()`), which no change of
 * the system's time moves; beats, pictures and taps all read it there.
 */

/** A heat's zero on the page's clock, in ms of `performance.now()`, and its possible error. */
export interface Anchor {
  readonly zeroAt: number;
  readonly doubtMs: number;
}

/** An answer with the heat's elapsed time. Times in ms of `performance.now()`. */
export interface Answered {
  /** Time from the heat's zero to the making of the answer; negative during the count-in. */
  readonly elapsedMs: number;
  readonly askedAt: number;
  readonly answeredAt: number;
}

/** The time of a heat, in ms since its zero. One per heat and window; every beat and count reads it. */
export interface HeatClock {
  /** Returns the heat's current time; negative during the count-in. */
  elapsed(): number;
  /** Returns the heat's time of an event (`event.timeStamp` of the native event), however late its handler runs. */
  elapsedAt(timeStamp: number): number;
  /** Returns when the heat reaches `elapsedMs`, in ms of `performance.now()`. */
  performanceAt(elapsedMs: number): number;
  /** Returns how far the clock may be off, in ms. */
  doubtMs(): number;
  /** Takes an answer's anchor if it is the better one: see {@link betterAnchor}. */
  settle(anchor: Anchor): void;
}

/** An answer that differs by over this many ms is from another start (or the computer slept), not a slow one. */
const anotherStartMs = 250;
/** Oldest time stamp of a tap, in ms; some computers give stamps of another clock. */
const oldestTapMs = 10_000;

/** Returns an answer's anchor: {@link betterAnchor} keeps the one of the smallest round trip. */
export function anchorOfAnswer({ elapsedMs, askedAt, answeredAt }: Answered): Anchor {
  const { aheadMs, doubtMs } = offsetOf({ askedAt, answeredAt, shownMs: elapsedMs });
  return { zeroAt: -aheadMs, doubtMs };
}

/** Returns the anchor of a heat that a tap in this window starts: at `timeStamp` its clock shows `elapsedMs`. */
export function anchorOfTap(timeStamp: number, elapsedMs: number): Anchor {
  return { zeroAt: timeStamp - elapsedMs, doubtMs: 0 };
}

/**
 * Chooses between two anchors. The surer one wins, so that a slow answer never shifts a running clock; but one that
 * differs by over a quarter of a second is news, and replaces it.
 */
export function betterAnchor(kept: Anchor, fresh: Anchor): Anchor {
  const apart = Math.abs(fresh.zeroAt - kept.zeroAt);
  if (apart > anotherStartMs + kept.doubtMs + fresh.doubtMs) return fresh;
  return fresh.doubtMs < kept.doubtMs ? fresh : kept;
}

/** Makes a heat's clock. `now` reads the page's monotonic clock. */
export function createHeatClock(first: Anchor, now: () => number = () => performance.now()): HeatClock {
  let anchor = first;
  return {
    elapsed: () => now() - anchor.zeroAt,
    elapsedAt: (timeStamp) => timeOfTap(timeStamp, now()) - anchor.zeroAt,
    performanceAt: (elapsedMs) => anchor.zeroAt + elapsedMs,
    doubtMs: () => anchor.doubtMs,
    settle(fresh) {
      anchor = betterAnchor(anchor, fresh);
    },
  };
}

function timeOfTap(timeStamp: number, now: number): number {
  const plausible = timeStamp <= now && timeStamp >= now - oldestTapMs;
  return plausible ? timeStamp : now;
}

/** Asks, with the times: `const { answer, askedAt, answeredAt } = await timed(() => client.heat.view.query(…))`. */
export async function timed<Result>(
  ask: () => Promise<Result>,
  now: () => number = () => performance.now(),
): Promise<{ readonly answer: Result; readonly askedAt: number; readonly answeredAt: number }> {
  const askedAt = now();
  const answer = await ask();
  return { answer, askedAt, answeredAt: now() };
}
