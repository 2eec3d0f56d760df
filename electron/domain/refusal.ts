import type { Sentence } from "./words.ts";

/** The reasons for a refusal: a short list of codes that every carrier can translate. */
export type RefusalCode = "bad-input" | "not-found" | "conflict" | "forbidden" | "unavailable";

/** A refusal with a sentence that says what to do. Nothing has changed when one is thrown. */
export class Refusal extends Error {
  readonly code: RefusalCode;
  readonly sentence: Sentence;
  constructor(code: RefusalCode, sentence: Sentence) {
    super(sentence.key);
    this.code = code;
    this.sentence = sentence;
  }
}
