import type { Sentence } from "../words.ts";
import { protocolOf, type TestCode } from "./registry.ts";

/** The judgement of attempts entered together. */
export interface Judgement {
  /** The reason to refuse them, or null. */
  readonly refusal: Sentence | null;
  /** Questions to answer before they are accepted, each once. */
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
