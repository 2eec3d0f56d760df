import { sameBoot } from "../../electron/domain/heats/clock.ts";
import { type Exchange, offsetOf } from "../../electron/domain/heats/offset.ts";
import type { ReadMoment } from "../../electron/domain/heats/start.ts";

/** The table's monotonic clock as a page reads it, so that the page can say on it when something happened here. */
export interface TableClock {
  /** Takes an answer in which the table's clock showed `shownMs` of a boot, if it is surer than what was read before. */
  learn(exchange: Exchange, boot: string): void;
  /** Returns the table's moment at `performanceMs` of this page; null where its clock was not read, or not since a sleep. */
  at(performanceMs: number): ReadMoment | null;
}

interface Reading {
  readonly boot: string;
  readonly aheadMs: number;
  readonly doubtMs: number;
  /** When it was read, and by how much wall time was ahead then, in ms of the page's monotonic clock. */
  readonly readAt: number;
  readonly wallAhead: number;
}

/** Two crystals are up to about 100 millionths apart, as in `audio-clock.ts`; what was read long ago is less sure. */
const driftPart = 1e-4;
/** A monotonic clock stands still in a machine that sleeps and wall time does not: by so many ms it is told. */
const sleptMs = 1_000;

/** Makes a clock that has not been read. `now` and `wall` read the page's monotonic and wall clock. */
export function createTableClock(
  now: () => number = () => performance.now(),
  wall: () => number = () => Date.now(),
): TableClock {
  let kept: Reading | null = null;
  const wallAhead = () => wall() - now();
  const isFresh = (reading: Reading) => Math.abs(wallAhead() - reading.wallAhead) <= sleptMs;
  return {
    learn(exchange, boot) {
      const read = { boot, ...offsetOf(exchange), readAt: exchange.answeredAt, wallAhead: wallAhead() };
      if (kept === null || !isFresh(kept) || isBetter(read, kept)) kept = read;
    },
    at(performanceMs) {
      if (kept === null || !isFresh(kept)) return null;
      const { boot, aheadMs } = kept;
      return { ms: performanceMs + aheadMs, boot, doubtMs: doubtAt(kept, performanceMs) };
    },
  };
}

function doubtAt({ doubtMs, readAt }: Reading, performanceMs: number): number {
  return doubtMs + Math.abs(performanceMs - readAt) * driftPart;
}

/** True for the surer of two readings, and for one that can't be of the same clock. */
function isBetter(read: Reading, kept: Reading): boolean {
  const keptDoubtMs = doubtAt(kept, read.readAt);
  const apart = Math.abs(read.aheadMs - kept.aheadMs) > read.doubtMs + keptDoubtMs;
  return apart || !sameBoot(read.boot, kept.boot) || read.doubtMs <= keptDoubtMs;
}
