import type { Mark } from "../tests/protocol.ts";
import { type Sentence, sentence } from "../words.ts";
import type { Made } from "./made.ts";

/** A mark as it was made, and from how few trials; `trials` null: from all, or it takes but one. */
export interface MadeMark extends Made {
  readonly trials: number | null;
}

/** Fewest minutes by which two rests differ to be worth telling, where one is also half of the other. Ours, no source. */
const restApart = 5;

/** Returns the trials that a mark is the best of, where they are fewer than the rules allow; else null. */
export function fewTrials(mark: Mark): number | null {
  return mark.state === "complete" ? (mark.trials?.done ?? null) : null;
}

/** True if two marks are the best of equally many trials: the best of three is higher than the best of one by chance. */
export function areAlike(one: Pick<MadeMark, "trials">, other: Pick<MadeMark, "trials">): boolean {
  return one.trials === other.trials;
}

/**
 * Says in what a mark was made otherwise than the one before, by the same rules; empty where nothing is known of it. Of
 * marks that can't be compared it says that alone: there is no change beside which more could be told.
 */
export function madeOtherwise(now: MadeMark, before: MadeMark): Sentence[] {
  if (!areAlike(now, before)) return [trialsOtherwise(now, before)];
  return [positionOtherwise(now, before), restOtherwise(now, before)].filter((each) => each !== null);
}

function trialsOtherwise(now: MadeMark, before: MadeMark): Sentence {
  if (before.trials === null) return sentence("marks.otherwise.fewer", { count: now.trials ?? 0 });
  if (now.trials === null) return sentence("marks.otherwise.more", { count: before.trials });
  return sentence("marks.otherwise.trials", { now: now.trials, before: before.trials });
}

function positionOtherwise({ position: now }: MadeMark, { position: before }: MadeMark): Sentence | null {
  if (now === null || before === null || now === before) return null;
  return sentence("marks.otherwise.position", { now, before });
}

function restOtherwise({ restMinutes: now }: MadeMark, { restMinutes: before }: MadeMark): Sentence | null {
  if (now === null || before === null) return null;
  const [less, more] = [Math.min(now, before), Math.max(now, before)];
  if (more - less < restApart || 2 * less > more) return null;
  return sentence("marks.otherwise.rest", { now, before });
}
