import { type CoreParameters, stageAt } from "../protocols/core.ts";
import type { TestCode } from "../protocols/protocol.ts";
import type { ParametersOf } from "../protocols/registry.ts";
import type { Sentence } from "../words.ts";
import { trialCountInMs } from "./agility.ts";
import { countInMs } from "./fold.ts";
import { msPerBeat } from "./push-up.ts";

/**
 * A moment at which something is heard, from time 0 (of the heat; of the trial for the quadrant jump).
 * count-in: `count` is what is left of it, 1 last. start: time 0. top: the judging beat of cadence `count`. bottom: a
 * beat between, which guides. end: the time is over. warning: the next stage comes in `warningMs`; change: it is here.
 */
export interface Cue {
  readonly atMs: number;
  readonly cue: "count-in" | "start" | "top" | "bottom" | "end" | "warning" | "change";
  readonly count?: number;
  /** What a voice says: the stage that begins, or (warning) the one that comes next. */
  readonly say?: Sentence;
}

/** How long before a change of stage it is announced. */
export const warningMs = 3000;

/**
 * All cues of a test from `fromMs` (included) to `untilMs` (not included), in the order of time. Ask for a little more
 * than is about to be heard, again and again: the answer depends on nothing but the times.
 */
export function cuesBetween<Test extends TestCode>(
  test: Test,
  parameters: ParametersOf<Test>,
  fromMs: number,
  untilMs: number,
): Cue[] {
  const all = timelines[test](parameters as never, fromMs, untilMs);
  return all.filter(({ atMs }) => atMs >= fromMs && atMs < untilMs);
}

const timelines: {
  [Test in TestCode]: (parameters: ParametersOf<Test>, from: number, until: number) => Cue[];
} = {
  "push-up": pushUpCues,
  agility: ({ seconds }) => [...countIn(trialCountInMs), { atMs: seconds * 1000, cue: "end" }],
  vertical: () => [],
  core: coreCues,
  endurance: (parameters) => countIn(countInMs("endurance", parameters)),
};

/** A count-in of whole seconds, and the start. */
function countIn(ms: number, say?: Sentence): Cue[] {
  const counts = Array.from({ length: ms / 1000 }, (_, index) => ms / 1000 - index);
  const start: Cue = { atMs: 0, cue: "start", ...(say !== undefined && { say }) };
  return [...counts.map((count): Cue => ({ atMs: -1000 * count, cue: "count-in", count })), start];
}

function pushUpCues(parameters: ParametersOf<"push-up">, fromMs: number, untilMs: number): Cue[] {
  const beat = msPerBeat(parameters);
  const first = Math.max(-countInMs("push-up", parameters) / beat, Math.floor(fromMs / beat));
  const count = Math.max(0, Math.ceil(untilMs / beat) - first + 1);
  return Array.from({ length: count }, (_, index) => beatCue(first + index, beat, parameters.beatsPerRep));
}

/** One beat by its ordinal: each by itself from time 0, so that no rounding adds up. */
function beatCue(ordinal: number, beat: number, beatsPerRep: number): Cue {
  const atMs = ordinal * beat;
  if (ordinal < 0) return { atMs, cue: "count-in", count: -ordinal };
  if (ordinal === 0) return { atMs, cue: "start" };
  if (ordinal % beatsPerRep === 0) return { atMs, cue: "top", count: ordinal / beatsPerRep };
  return { atMs, cue: "bottom" };
}

function coreCues(parameters: CoreParameters, fromMs: number, untilMs: number): Cue[] {
  const cues = countIn(countInMs("core", parameters), stageAt(parameters, 0).sentence);
  let stage = stageAt(parameters, Math.max(0, fromMs / 1000));
  if (stage.from > 0) cues.push({ atMs: stage.from * 1000, cue: "change", say: stage.sentence });
  while (stage.until * 1000 - warningMs < untilMs) {
    const next = stageAt(parameters, stage.until);
    cues.push({ atMs: stage.until * 1000 - warningMs, cue: "warning", say: next.sentence });
    cues.push({ atMs: stage.until * 1000, cue: "change", say: next.sentence });
    stage = next;
  }
  return cues;
}
