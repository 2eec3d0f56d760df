import { after, type Moment, sameBoot } from "./clock.ts";

/** A moment on the table's monotonic clock, as another screen has read that clock. */
export interface ReadMoment extends Pick<Moment, "ms" | "boot"> {
  /** How far it may be off, either way, in ms. */
  readonly doubtMs: number;
}

/** What the table is told of the tap that started a heat. */
export interface SentStart {
  /** Ms from the tap to its sending, by the clock of the screen that was tapped. */
  readonly startedAgoMs: number;
  /** The tap on the table's clock; null where that screen has not read it. */
  readonly tapped: ReadMoment | null;
}

/** The moment of a start tap, as far as the table knows it. */
export interface KnownStart {
  readonly at: Moment;
  /** How far it may be off, in ms; null: nobody knows how long it was under way. */
  readonly doubtMs: number | null;
}

/** A tap that is older than this when the table hears of it is not believed, in ms. */
export const oldestStartMs = 600_000;

/**
 * Works out when a heat was started, however long the network held the tap up: from the table's own clock as the tapped
 * screen had read it. Whoever hears of a tap knows besides that it came no later than it was sent, so the reading counts up
 * to then. Without a reading of this boot's clock only the tap's age is left, and how long it was under way is in it.
 */
export function startOf({ startedAgoMs, tapped }: SentStart, heard: Moment): KnownStart {
  if (tapped === null || !isBelievable(tapped, heard)) {
    return { at: after(heard, -startedAgoMs), doubtMs: null };
  }
  const [earliest, furthest] = [tapped.ms - tapped.doubtMs, tapped.ms + tapped.doubtMs];
  const sent = heard.ms - startedAgoMs;
  // An age that contradicts the reading is of a page that began anew after somebody set its wall clock.
  const latest = earliest <= sent ? sent : heard.ms;
  const ms = Math.min(tapped.ms, latest);
  return {
    at: after(heard, ms - heard.ms),
    doubtMs: Math.max(ms - earliest, Math.min(furthest, latest) - ms),
  };
}

function isBelievable({ ms, boot, doubtMs }: ReadMoment, heard: Moment): boolean {
  const agoMs = heard.ms - ms;
  return sameBoot(boot, heard.boot) && agoMs >= -doubtMs && agoMs <= oldestStartMs + doubtMs;
}
