/**
 * Folds text as people compare it: without case, accents, punctuation and double spaces ("Zoë  O'Hara" and "zoe o hara"
 * are one). Letters and digits of every script stay; a text without any is only put in lower case.
 */
export function fold(text: string): string {
  const plain = text
    .normalize("NFKD")
    .replace(/\p{M}+/gu, "")
    .toLowerCase();
  const words = plain.replace(/[^\p{L}\p{N}]+/gu, " ").trim();
  return words === "" ? plain.trim() : words;
}
