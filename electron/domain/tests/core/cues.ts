import { type Sentence, sentence } from "../../words.ts";
import { type Cue, countIn } from "../cue.ts";
import { liveCore } from "./live.ts";
import { type CoreParameters, type Stage, stageAt } from "./protocol.ts";

/** Ms by which a change of stage is announced ahead. */
export const warningMs = 3000;

/**
 * The count-in, and every change of stage, announced before it comes and called when it is there. Only the call says
 * what to do now, so that nobody moves at the announcement.
 */
export function coreCues(parameters: CoreParameters, fromMs: number, untilMs: number): Cue[] {
  const cues = countIn(liveCore.countInMs(parameters), called(stageAt(parameters, 0)));
  let stage = stageAt(parameters, Math.max(0, fromMs / 1000));
  if (stage.from > 0) cues.push({ atMs: stage.from * 1000, cue: "change", say: called(stage) });
  while (stage.until * 1000 - warningMs < untilMs) {
    const next = stageAt(parameters, stage.until);
    cues.push({ atMs: stage.until * 1000 - warningMs, cue: "warning", say: announced(next) });
    cues.push({ atMs: stage.until * 1000, cue: "change", say: called(next) });
    stage = next;
  }
  return cues;
}

/** Returns the position to take now, with the limb that goes down where there is one. */
function called({ name }: Stage): Sentence {
  return sentence(`stages.call.${name}`);
}

/** Returns the announcement of the next position. */
function announced({ name }: Stage): Sentence {
  return sentence(`stages.soon.${name}`);
}
