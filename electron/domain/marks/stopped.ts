import type { Mark, Unfinished } from "../tests/protocol.ts";
import { definitionOf, protocolOf, type TestCode } from "../tests/registry.ts";
import { type Sentence, sentence } from "../words.ts";

/**
 * Says how far somebody came beside last time, where they stopped before the end now or then: reps done order both, and
 * nobody knows how much those vary by themselves, so that no word judges the change. Null where both were finished.
 * @param parameters of both days, whose rules are the same
 */
export function stopsTold(test: TestCode, parameters: unknown, now: Mark, before: Mark): Sentence | null {
  if (before.state === "unfinished") return sinceStop(test, parameters, now, before);
  if (now.state !== "unfinished" || before.state !== "complete") return null;
  const { number: time } = protocolOf(test).write(before.value, "cm");
  const reps = repsOf(test, parameters, now);
  return reps === null ? null : sentence("marks.stopped.finishedBefore", { ...reps, time });
}

function sinceStop(test: TestCode, parameters: unknown, now: Mark, before: Unfinished): Sentence | null {
  const then = repsOf(test, parameters, before);
  if (then === null) return null;
  const { done: earlier, of } = then;
  if (now.state === "complete") return sentence("marks.stopped.finishedNow", { before: earlier, of });
  const reps = now.state === "unfinished" ? repsOf(test, parameters, now) : null;
  return reps === null ? null : sentence("marks.stopped.again", { ...reps, before: earlier });
}

function repsOf(test: TestCode, parameters: unknown, mark: Unfinished) {
  return definitionOf(test).repsDone?.(parameters, mark) ?? null;
}
