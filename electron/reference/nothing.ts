import type { Sentence } from "../domain/words.ts";

/** The reason why nothing can be merged, in one line. */
export class NothingToMerge extends Error {
  readonly sentence: Sentence;
  /** Whether the words of the command are the reason, so that it helps to see how they go. */
  readonly isAboutWords: boolean = false;
  constructor(why: Sentence) {
    super(why.key);
    this.sentence = why;
  }
}

/** The command's words are not understood, or one is missing. */
export class WordsNotUnderstood extends NothingToMerge {
  override readonly isAboutWords = true;
}
