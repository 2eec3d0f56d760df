import { z } from "zod/mini";
import type { Elapsed, LaneResult, LaneState, LiveTest, Tap } from "../live.ts";
import {
  type AgilityAttempt,
  type AgilityParameters,
  countShape,
  type Direction,
  directions,
  lapsOf,
} from "./protocol.ts";

/**
 * Ms in which a landing seen at the very end is tapped after the whistle: about a reaction time (from memory, ours).
 */
export const reactionMs = 250;

const direction = z.enum(["cw", "ccw"]);
const what = z.discriminatedUnion("kind", [
  /** A trial; `atMs` is its start signal, after the count-in (`trialCountInMs` after the tap). */
  z.object({ kind: z.literal("go"), detail: z.object({ direction }) }),
  z.object({ kind: z.literal("landing"), detail: z.object({}) }),
  /** A touch of a line; can be added until the trial is counted. */
  z.object({ kind: z.literal("touch"), detail: z.object({}) }),
  /** The trial with its count by eye. */
  z.object({
    kind: z.literal("count"),
    detail: z.object(countShape),
  }),
  /** The trial with its tapped count. */
  z.object({ kind: z.literal("take"), detail: z.object({}) }),
  /** The current trial does not count and is run again. */
  z.object({ kind: z.literal("false-start"), detail: z.object({}) }),
  /** A counted trial is void and is run again. */
  z.object({
    kind: z.literal("rerun"),
    detail: z.object({ direction, reason: z.string().check(z.trim(), z.minLength(1), z.maxLength(500)) }),
  }),
]);
/** A tap of this test's own kinds. */
export type AgilityTap = z.infer<typeof what>;

interface Trial {
  readonly direction: Direction;
  readonly fromMs: number;
  readonly untilMs: number;
  readonly landings: number;
  readonly touches: number;
}

/** A trial that did not count; it stays visible. */
interface LostTrial {
  readonly direction: Direction;
  readonly atMs: number;
  /** Empty for a false start. */
  readonly reason: string;
}

/** The state folded from a lane's taps. */
export interface AgilityKept {
  readonly prior: readonly AgilityAttempt[];
  readonly trial: Trial | null;
  readonly counted: readonly LaneResult<AgilityAttempt>[];
  readonly lost: readonly LostTrial[];
  /** End of the last trial, in ms from time 0. */
  readonly lastEndMs: number | null;
}

export interface AgilityLane extends LaneState<AgilityAttempt> {
  /** The current trial; `to-count` once its time is over. `laps` and `extra` are the landings tapped. */
  readonly trial:
    | (Trial & {
        readonly stage: "count-in" | "running" | "to-count";
        readonly laps: number;
        readonly extra: number;
      })
    | null;
  /** Direction of the next trial; null when both are counted. */
  readonly next: Direction | null;
  readonly counted: readonly AgilityAttempt[];
  readonly lost: readonly LostTrial[];
  /** End of the last trial, in ms from time 0: the rest until the next one starts there. */
  readonly lastEndMs: number | null;
}

function hasCounted(kept: AgilityKept, wanted: Direction): boolean {
  const all = [...kept.prior, ...kept.counted.map(({ seen }) => seen)];
  return all.some((seen) => seen.direction === wanted);
}

function counted(kept: AgilityKept, tap: Tap, seen: Omit<AgilityAttempt, "direction">): AgilityKept {
  const { trial } = kept;
  if (trial === null || tap.atMs < trial.untilMs) return kept;
  const result = { key: trial.direction, seen: { direction: trial.direction, ...seen } };
  return { ...kept, trial: null, counted: [...kept.counted, result], lastEndMs: trial.untilMs };
}

/** Handles taps that need a current trial. */
function during(kept: AgilityKept, trial: Trial, tap: Tap & AgilityTap): AgilityKept {
  switch (tap.kind) {
    case "landing": {
      const inTime = tap.atMs >= trial.fromMs && tap.atMs < trial.untilMs + reactionMs;
      return inTime ? { ...kept, trial: { ...trial, landings: trial.landings + 1 } } : kept;
    }
    case "touch":
      return tap.atMs < trial.fromMs ? kept : { ...kept, trial: { ...trial, touches: trial.touches + 1 } };
    case "count":
      return counted(kept, tap, tap.detail);
    case "take":
      return counted(kept, tap, { ...lapsOf(trial.landings), touches: trial.touches });
    case "false-start": {
      const lost = { direction: trial.direction, atMs: tap.atMs, reason: "" };
      const lastEndMs = Math.max(trial.fromMs, Math.min(tap.atMs, trial.untilMs));
      return { ...kept, trial: null, lost: [...kept.lost, lost], lastEndMs };
    }
    default:
      return kept;
  }
}

function step(kept: AgilityKept, tap: Tap & AgilityTap, parameters: AgilityParameters): AgilityKept {
  if (tap.kind === "go") {
    if (kept.trial !== null || hasCounted(kept, tap.detail.direction)) return kept;
    const untilMs = tap.atMs + parameters.seconds * 1000;
    const trial = { direction: tap.detail.direction, fromMs: tap.atMs, untilMs, landings: 0, touches: 0 };
    return { ...kept, trial };
  }
  if (tap.kind === "rerun") {
    const remaining = kept.counted.filter(({ seen }) => seen.direction !== tap.detail.direction);
    if (remaining.length === kept.counted.length) return kept;
    return { ...kept, counted: remaining, lost: [...kept.lost, { ...tap.detail, atMs: tap.atMs }] };
  }
  return kept.trial === null ? kept : during(kept, kept.trial, tap);
}

function stageOf(trial: Trial, elapsed: Elapsed): "count-in" | "running" | "to-count" {
  if (elapsed === null || elapsed < trial.fromMs) return "count-in";
  return elapsed < trial.untilMs ? "running" : "to-count";
}

function show(kept: AgilityKept, _parameters: AgilityParameters, elapsed: Elapsed): AgilityLane {
  const { trial, lost, lastEndMs } = kept;
  const next = directions.find((each) => !hasCounted(kept, each)) ?? null;
  const begun = trial !== null || lost.length > 0 || kept.counted.length > 0;
  return {
    phase: trial === null && next === null ? "done" : begun ? "going" : "ready",
    results: kept.counted,
    trial: trial === null ? null : { ...trial, stage: stageOf(trial, elapsed), ...lapsOf(trial.landings) },
    next,
    counted: [...kept.prior, ...kept.counted.map(({ seen }) => seen)],
    lost,
    lastEndMs,
  };
}

/** Time from the tap to a trial's start signal. */
export const trialCountInMs = 3000;

/**
 * Runs the quadrant jump live: each trial has its own start (of one lane, or of all at once), clockwise and
 * counter-clockwise in turn. Counting by eye and tapping each landing give the same attempt. A trial from earlier today
 * counts. Source: common practice, no published source.
 */
export const liveAgility: LiveTest<AgilityParameters, AgilityAttempt, AgilityTap, AgilityKept, AgilityLane> =
  {
    clock: "own",
    countInMs: () => 0,
    what,
    empty: (_parameters, prior) => ({ prior, trial: null, counted: [], lost: [], lastEndMs: null }),
    step,
    show,
  };
