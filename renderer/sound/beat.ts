/** The state of a rep of the cadence at a moment, for the big visual beat. Pure; times in ms of the heat's clock. */
export interface BeatMoment {
  /** rest: before the count-in. count-in: before time 0. down, up: on the way to the bottom, to the top. */
  readonly way: "rest" | "count-in" | "down" | "up";
  /** 0 at the top, 1 at the bottom: exactly there on the beat, moving evenly in between. */
  readonly place: number;
  /** Ms since the last beat. */
  readonly sinceBeat: number;
  /** Beats left of the count-in, 1 last; 0 after it. */
  readonly count: number;
}

/** Returns the beat at `elapsedMs` of the heat's clock. */
export function beatAt(
  elapsedMs: number,
  beatMs: number,
  beatsPerRep: number,
  countInBeats: number,
): BeatMoment {
  const ordinal = Math.floor(elapsedMs / beatMs);
  const sinceBeat = elapsedMs - ordinal * beatMs;
  if (ordinal < -countInBeats) return { way: "rest", place: 0, sinceBeat: 0, count: 0 };
  if (ordinal < 0) return { way: "count-in", place: 0, sinceBeat, count: -ordinal };
  const repMs = beatMs * beatsPerRep;
  const part = (elapsedMs % repMs) / repMs;
  return { way: part < 0.5 ? "down" : "up", place: 1 - Math.abs(1 - 2 * part), sinceBeat, count: 0 };
}
