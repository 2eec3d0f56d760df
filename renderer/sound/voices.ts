/**
 * The sounds of the cues. All are made from oscillators and noise; no file. A hall is loud below 500 Hz (feet, wheels,
 * voices), so the energy lies between 1 and 4 kHz, where ears are keenest (the dip of the equal-loudness contours, ISO
 * 226). Pitch, length and pattern differ together, so that no good ear is needed to know each.
 */

/** Every sound: one for each cue of a heat, and `two-off`, the warning at two off cadences in a row. */
export const soundNames = [
  "count-in",
  "start",
  "top",
  "bottom",
  "end",
  "warning",
  "change",
  "two-off",
] as const;
export type SoundName = (typeof soundNames)[number];

/** One tone of a sound. */
export interface Note {
  readonly wave: "sine" | "triangle" | "square" | "noise";
  /** Pitch in Hz; for noise, the middle of its band. */
  readonly hertz: number;
  /** The pitch in Hz at the end of a glide. */
  readonly toHertz?: number;
  /** Start after the sound's own start, and length, in ms. */
  readonly at: number;
  readonly ms: number;
  /** Loudest amplitude, 0 to 1. The notes of a sound that ring together sum to at most 1. */
  readonly peak: number;
  /** struck: loud at once, then decaying. held: constant until its end. */
  readonly shape: "struck" | "held";
}

export const voices: Readonly<Record<SoundName, readonly Note[]>> = {
  "count-in": [struck("triangle", 1500, 0, 70, 0.6)],
  top: [struck("square", 2100, 0, 130, 0.4), struck("sine", 3150, 0, 90, 0.3)],
  bottom: [struck("triangle", 1150, 0, 110, 0.6)],
  start: [held("square", 1400, 0, 420, 0.42, 2800), held("sine", 2800, 0, 420, 0.3, 3600)],
  // Two near pitches beat against each other, with breath over them: a pea whistle.
  end: [held("sine", 2480, 0, 950, 0.42), held("sine", 2545, 0, 950, 0.38), held("noise", 2900, 0, 950, 0.2)],
  warning: [struck("triangle", 1320, 0, 180, 0.6), struck("triangle", 1760, 220, 220, 0.6)],
  change: [
    held("square", 1760, 0, 110, 0.6),
    held("square", 2217, 130, 110, 0.6),
    held("square", 2637, 260, 260, 0.6),
  ],
  "two-off": [held("square", 3000, 0, 110, 0.3, 2200), held("square", 3000, 170, 110, 0.3, 2200)],
};

function struck(wave: Note["wave"], hertz: number, at: number, ms: number, peak: number): Note {
  return { wave, hertz, at, ms, peak, shape: "struck" };
}

function held(
  wave: Note["wave"],
  hertz: number,
  at: number,
  ms: number,
  peak: number,
  toHertz: number = hertz,
): Note {
  return { wave, hertz, toHertz, at, ms, peak, shape: "held" };
}
