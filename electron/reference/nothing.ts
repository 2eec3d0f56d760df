import type { Sentence } from "../domain/words.ts";

/** The reason why nothing can be merged, in one line. */
export class NothingToMerge extends Error {
  readonly sentence: Sentence;
  constructor(why: Sentence) {
    super(why.key);
    this.sentence = why;
  }
}
