import { z } from "zod/mini";
import type { Elapsed, LaneState, LiveTest, Tap } from "../live.ts";
import { mostCadences, type PushUpAttempt, type PushUpParameters } from "./protocol.ts";

/** Part of a rep before its judging beat from which a tap means that beat: judges tap early when they see it coming. */
const early = 0.25;
const countInBeats = 4;
/**
 * Ms after a judging beat in which a stop leaves open whether that rep was done: whoever sees an athlete fail on the way
 * up needs about a second to press. Of a quick rep no more than its half: by then the next one is under way. Ours, no
 * source.
 */
const doubtMs = 1250;

const cadence = z.int().check(z.minimum(1), z.maximum(mostCadences));
const what = z.discriminatedUnion("kind", [
  /** A missed rep: the current cadence, unless one is given. */
  z.object({ kind: z.literal("off"), detail: z.object({ cadence: z.exactOptional(cadence) }) }),
  /** The cadence was on after all. */
  z.object({ kind: z.literal("on-again"), detail: z.object({ cadence }) }),
  /** The athlete stopped, after the last finished cadence unless one is given. */
  z.object({
    kind: z.literal("stop"),
    detail: z.object({ cadence: z.exactOptional(z.int().check(z.minimum(0), z.maximum(mostCadences))) }),
  }),
  /** Whether the cadence on whose beat the stop came was done. */
  z.object({ kind: z.literal("last"), detail: z.object({ cadence, done: z.boolean() }) }),
]);

/** A tap of this test's own kinds. */
export type PushUpTap = z.infer<typeof what>;

/** The state folded from a lane's taps. */
export interface PushUpKept {
  /** Ordinals of the off cadences, ascending. */
  readonly off: readonly number[];
  /** One character per cadence, once the lane has ended. */
  readonly ended: string | null;
  /** The cadence of which a stop leaves open whether it was done; it does not count until somebody says so. */
  readonly doubted: number | null;
}

export interface PushUpLane extends LaneState<PushUpAttempt> {
  /** One character per cadence judged so far: "." on (or not marked yet), "x" off. */
  readonly cadences: string;
  /** The mark if the test ended now. */
  readonly reps: number;
  /** The cadence that a tap would mark now; 0 before the first. */
  readonly atHand: number;
  /** Off cadences in a row so far; one short of the stop is the time to warn. */
  readonly misses: number;
  readonly warning: boolean;
  /** The two marks that a stop leaves open: without the cadence on whose beat it came, and with it. */
  readonly doubt: { readonly without: number; readonly with: number } | null;
}

export function msPerBeat({ bpm }: PushUpParameters): number {
  return 60_000 / bpm;
}

/** Returns the ms of one rep: 3.000 s at 40 bpm and two beats per rep. Cadence n is judged at n times this. */
export function msPerRep(parameters: PushUpParameters): number {
  return msPerBeat(parameters) * parameters.beatsPerRep;
}

/** Counts the cadences whose judging beat has passed. */
function judgedBy(parameters: PushUpParameters, atMs: number): number {
  return Math.min(mostCadences, Math.max(0, Math.floor(atMs / msPerRep(parameters))));
}

/** Returns the cadence that a tap means: from a quarter rep before its judging beat to a quarter before the next. */
export function cadenceAt(parameters: PushUpParameters, atMs: number): number {
  return Math.min(mostCadences, Math.max(0, Math.floor(atMs / msPerRep(parameters) + early)));
}

function signs(off: readonly number[], count: number): string {
  return Array.from({ length: count }, (_, index) => (off.includes(index + 1) ? "x" : ".")).join("");
}

/** Returns the cadences up to the misses in a row that end the test, or null before that. */
function endedBy(off: readonly number[], missesToStop: number): string | null {
  const all = signs(off, off.at(-1) ?? 0);
  const end = all.indexOf("x".repeat(missesToStop));
  return end < 0 ? null : all.slice(0, end + missesToStop);
}

function markOff(kept: PushUpKept, wanted: number, atHand: number, missesToStop: number): PushUpKept {
  if (wanted < 1 || wanted > atHand || kept.off.includes(wanted)) return kept;
  const off = [...kept.off, wanted].sort((a, b) => a - b);
  return { ...kept, off, ended: endedBy(off, missesToStop) };
}

function stopped(kept: PushUpKept, tap: Tap & PushUpTap, parameters: PushUpParameters): PushUpKept {
  const judged = judgedBy(parameters, tap.atMs);
  const named = tap.detail.cadence;
  if (named !== undefined) return named > judged ? kept : { ...kept, ended: signs(kept.off, named) };
  const lastOff = kept.off.at(-1) ?? 0;
  const sinceBeat = tap.atMs - judged * msPerRep(parameters);
  const isOpen = judged > lastOff && sinceBeat < Math.min(doubtMs, msPerRep(parameters) / 2);
  // What was not finished is not on, and what is off right before it stays at the end.
  if (isOpen) return { ...kept, ended: signs(kept.off, judged - 1), doubted: judged };
  // An off cadence tapped just ahead of its beat counts, though the beat has not come.
  return { ...kept, ended: signs(kept.off, Math.max(judged, lastOff)) };
}

/** Takes the answer whether the cadence of the stop was done. */
function settled(kept: PushUpKept, { detail }: Extract<PushUpTap, { kind: "last" }>): PushUpKept {
  if (kept.doubted === null || kept.doubted !== detail.cadence) return kept;
  return { ...kept, ended: signs(kept.off, detail.cadence - (detail.done ? 0 : 1)), doubted: null };
}

function step(kept: PushUpKept, tap: Tap & PushUpTap, parameters: PushUpParameters): PushUpKept {
  if (tap.kind === "last") return settled(kept, tap);
  if (kept.ended !== null || tap.atMs < 0) return kept;
  const atHand = cadenceAt(parameters, tap.atMs);
  switch (tap.kind) {
    case "off":
      return markOff(kept, tap.detail.cadence ?? atHand, atHand, parameters.missesToStop);
    case "on-again":
      if (!kept.off.includes(tap.detail.cadence)) return kept;
      return { ...kept, off: kept.off.filter((each) => each !== tap.detail.cadence) };
    case "stop":
      return stopped(kept, tap, parameters);
  }
}

function show(kept: PushUpKept, parameters: PushUpParameters, elapsed: Elapsed): PushUpLane {
  const last = kept.off.at(-1) ?? 0;
  const cadences = kept.ended ?? signs(kept.off, Math.max(judgedBy(parameters, elapsed ?? 0), last));
  const atHand = cadenceAt(parameters, elapsed ?? 0);
  // The current cadence is not on until its time to be marked is over.
  const over = kept.ended ?? signs(kept.off, Math.max(atHand - 1, last));
  const misses = over.length - over.replace(/x+$/, "").length;
  return {
    phase: kept.ended !== null ? "done" : elapsed === null ? "ready" : "going",
    results: kept.ended === null ? [] : [{ key: "mark", seen: { how: "cadences", cadences: kept.ended } }],
    cadences,
    reps: cadences.lastIndexOf(".") + 1,
    atHand,
    misses,
    warning: kept.ended === null && misses > 0 && misses === parameters.missesToStop - 1,
    doubt: kept.doubted === null ? null : { without: cadences.lastIndexOf(".") + 1, with: kept.doubted },
  };
}

/**
 * Runs the cadence push-up live: one metronome, many lanes. The volunteer marks only missed reps; a lane ends by itself
 * at the misses in a row, or by a stop, which asks about a beat that has just come. Source: common practice, no
 * published source.
 */
export const livePushUp: LiveTest<PushUpParameters, PushUpAttempt, PushUpTap, PushUpKept, PushUpLane> = {
  clock: "common",
  countInMs: (parameters) => countInBeats * msPerBeat(parameters),
  what,
  empty: () => ({ off: [], ended: null, doubted: null }),
  step,
  show,
};
