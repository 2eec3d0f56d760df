import type { Sentence } from "../words.ts";
import type { TestCode } from "./registry.ts";
import { protocolOf } from "./registry.ts";

/** What several attempts that are entered together are thought to be. */
export interface Judgement {
  /** Why they can't be taken, or null. */
  readonly refusal: Sentence | null;
  /** What to ask before they are taken; the same question is asked once. */
  readonly questions: readonly Sentence[];
}

/** Judges parsed attempts one by one; the first refusal decides. */
export function judge(test: TestCode, parameters: unknown, attempts: readonly unknown[]): Judgement {
  const opinions = attempts.map((seen) => protocolOf(test).plausibility(parameters, seen));
  const refused = opinions.find((opinion) => opinion.level === "refuse");
  if (refused !== undefined) return { refusal: refused.sentence, questions: [] };
  const questions = new Map<string, Sentence>();
  for (const opinion of opinions) {
    if (opinion.level === "ask") questions.set(JSON.stringify(opinion.sentence), opinion.sentence);
  }
  return { refusal: null, questions: [...questions.values()] };
}
