import { TRPCClientError } from "@trpc/client";
import type { Sentence } from "../../electron/domain/words.ts";

/** Returns the sentence about an error: the API's own, or ours where no answer came. */
export function sentenceOf(error: unknown): Sentence {
  if (error instanceof TRPCClientError) {
    const told: unknown = error.data?.sentence;
    if (isSentence(told)) return told;
  }
  return { key: isUnanswered(error) ? "common:trouble.unanswered" : "common:trouble.inside" };
}

/** True if the request got no answer: whether it was accepted is unknown. */
export function isUnanswered(error: unknown): boolean {
  return error instanceof TRPCClientError && (error.data === undefined || error.data === null);
}

function isSentence(value: unknown): value is Sentence {
  return typeof value === "object" && value !== null && "key" in value && typeof value.key === "string";
}
