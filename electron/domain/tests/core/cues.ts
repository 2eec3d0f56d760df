import { type Cue, countIn } from "../cue.ts";
import { liveCore } from "./live.ts";
import { type CoreParameters, stageAt } from "./protocol.ts";

/** Ms by which a change of stage is announced ahead. */
export const warningMs = 3000;

/** Returns the count-in and every change of stage, announced before it comes and called when it does. */
export function coreCues(parameters: CoreParameters, fromMs: number, untilMs: number): Cue[] {
  const cues = countIn(liveCore.countInMs(parameters), stageAt(parameters, 0).sentence);
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
