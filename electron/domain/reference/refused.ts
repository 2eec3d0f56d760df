import { Refusal } from "../refusal.ts";
import { type Sentence, sentence } from "../words.ts";
import { bundleLimits } from "./limits.ts";

/** Makes the refusal of a bundle; nothing of it is kept. */
export function refused(why: Sentence): Refusal {
  return new Refusal("bad-input", why);
}

/** Shortens and cleans a stranger's text for use in a sentence. */
export function shown(text: string): string {
  const plain = text.replaceAll(/[\p{Cc}\p{Cf}\p{Cs}]/gu, "·");
  return plain.length > 60 ? `${plain.slice(0, 60)}…` : plain;
}

/** Refuses a file with content that no bundle has. */
export function unreadable(name: string): Refusal {
  return refused(sentence("reference.unreadable", { name }));
}

/** Refuses a file larger than any of its kind (bytes): by default, than any bundle. */
export function tooBig(most: number = bundleLimits.bytes): Refusal {
  return refused(sentence("reference.tooBig", { megabytes: most / 1024 / 1024 }));
}
