/**
 * A heat's clock in a window. The heat's truth is the desk's: the store holds its start, and every answer says how much
 * time has passed since. The page hangs that on its own monotonic clock (`performance.now()`), which no change of the
 * system's time moves; beats, pictures and taps are all read from there.
 */

/** Where a heat's zero lies on the page's clock, in ms of `performance.now()`, and by how much that may be wrong. */
export interface Anchor {
  readonly zeroAt: number;
  readonly doubtMs: number;
}

/** An answer that tells how far a heat is. Times in ms of `performance.now()`. */
export interface Answered {
  /** Time since the heat's zero when the answer was made; negative during the count-in. */
  readonly elapsedMs: number;
  readonly askedAt: number;
  readonly answeredAt: number;
}

/** The time that a heat shows, in ms since its zero. One per heat and window; all that beats or counts reads it. */
export interface HeatClock {
  /** The heat's time now; negative during the count-in. */
  elapsed(): number;
  /** The heat's time of an event (`event.timeStamp` of the native event), whenever its handler came to run. */
  elapsedAt(timeStamp: number): number;
  /** When the heat reaches `elapsedMs`, in ms of `performance.now()`. */
  performanceAt(elapsedMs: number): number;
  /** Takes what an answer told, where it is the better knowledge: see {@link betterAnchor}. */
  settle(anchor: Anchor): void;
}

/** An answer that disagrees by more than this tells of another start (or a machine that slept), not of a slow way. */
const anotherStartMs = 250;
/** A time stamp older than this is no time of a tap: some machines hand out stamps of another clock. */
const oldestTapMs = 10_000;

/** Half of the way there and back lies between the answer's making and its coming: the other half is the doubt. */
export function anchorOfAnswer({ elapsedMs, askedAt, answeredAt }: Answered): Anchor {
  const half = Math.max(0, answeredAt - askedAt) / 2;
  return { zeroAt: answeredAt - half - elapsedMs, doubtMs: half };
}

/** The anchor of a heat that a tap in this window starts: at `timeStamp` its clock shows `elapsedMs`. */
export function anchorOfTap(timeStamp: number, elapsedMs: number): Anchor {
  return { zeroAt: timeStamp - elapsedMs, doubtMs: 0 };
}

/**
 * Which of two anchors to keep. The surer one wins, so that a slow answer never shifts a clock that runs; but one that
 * contradicts what is known by more than a quarter of a second is news, and taken.
 */
export function betterAnchor(kept: Anchor, fresh: Anchor): Anchor {
  const apart = Math.abs(fresh.zeroAt - kept.zeroAt);
  if (apart > anotherStartMs + kept.doubtMs + fresh.doubtMs) return fresh;
  return fresh.doubtMs < kept.doubtMs ? fresh : kept;
}

/** Makes the clock of a heat. `now` reads the page's monotonic clock. */
export function createHeatClock(first: Anchor, now: () => number = () => performance.now()): HeatClock {
  let anchor = first;
  return {
    elapsed: () => now() - anchor.zeroAt,
    elapsedAt: (timeStamp) => timeOfTap(timeStamp, now()) - anchor.zeroAt,
    performanceAt: (elapsedMs) => anchor.zeroAt + elapsedMs,
    settle(fresh) {
      anchor = betterAnchor(anchor, fresh);
    },
  };
}

function timeOfTap(timeStamp: number, now: number): number {
  const plausible = timeStamp <= now && timeStamp >= now - oldestTapMs;
  return plausible ? timeStamp : now;
}

/** Asks, and notes when: `const { answer, askedAt, answeredAt } = await timed(() => client.heat.view.query(…))`. */
export async function timed<Result>(
  ask: () => Promise<Result>,
  now: () => number = () => performance.now(),
): Promise<{ readonly answer: Result; readonly askedAt: number; readonly answeredAt: number }> {
  const askedAt = now();
  const answer = await ask();
  return { answer, askedAt, answeredAt: now() };
}
