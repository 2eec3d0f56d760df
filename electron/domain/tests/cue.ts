import type { Sentence } from "../words.ts";

/**
 * A sound and its moment, from time 0 (of the heat; of the trial for the quadrant jump). count-in: `count` is the
 * number left, 1 last. start: time 0. top: the judging beat of cadence `count`. bottom: a guiding beat in between. end:
 * the time is over. warning: the next stage comes soon. change: it is here.
 */
export interface Cue {
  readonly atMs: number;
  readonly cue: "count-in" | "start" | "top" | "bottom" | "end" | "warning" | "change";
  readonly count?: number;
  /** The spoken words: the stage that begins, or (warning) the one that comes next. */
  readonly say?: Sentence;
}

/** Returns a count-in of whole seconds, and the start. */
export function countIn(ms: number, say?: Sentence): Cue[] {
  const counts = Array.from({ length: ms / 1000 }, (_, index) => ms / 1000 - index);
  const start: Cue = { atMs: 0, cue: "start", ...(say !== undefined && { say }) };
  return [...counts.map((count): Cue => ({ atMs: -1000 * count, cue: "count-in", count })), start];
}
