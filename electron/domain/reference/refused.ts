import { Refusal } from "../refusal.ts";
import { type Sentence, sentence } from "../words.ts";
import { bundleLimits } from "./limits.ts";

/** A bundle that is not taken; nothing of it is kept. */
export function refused(why: Sentence): Refusal {
  return new Refusal("bad-input", why);
}

/** What somebody else wrote, short enough and plain enough to stand in a sentence. */
export function shown(text: string): string {
  const plain = text.replaceAll(/[\p{Cc}\p{Cf}\p{Cs}]/gu, "·");
  return plain.length > 60 ? `${plain.slice(0, 60)}…` : plain;
}

/** A file of the bundle that says something no bundle says. */
export function unreadable(name: string): Refusal {
  return refused(sentence("reference.unreadable", { name }));
}

/** A file larger than any bundle. */
export function tooBig(): Refusal {
  return refused(sentence("reference.tooBig", { megabytes: bundleLimits.bytes / 1024 / 1024 }));
}
