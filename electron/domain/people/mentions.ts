import { fold } from "./fold.ts";

/** Replaces a name that was removed from a text. */
const takenOut = "[…]";

interface Word {
  readonly folded: string;
  readonly start: number;
  readonly end: number;
}

/** Returns the words of a text, folded as names are compared, with their positions. */
function wordsOf(text: string): Word[] {
  return [...text.matchAll(/[\p{L}\p{N}\p{M}]+/gu)].flatMap(({ 0: word, index }) =>
    fold(word)
      .split(" ")
      .map((folded) => ({ folded, start: index, end: index + word.length })),
  );
}

/**
 * Removes a person's whole name from a text, whatever its case, accents and punctuation. A name of one word must be
 * written exactly so, since "Knee" may be a name and "knee" something else. Parts of a name, nicknames and initials are
 * not recognised.
 */
export function withoutName(text: string, name: string): string {
  if (text === "") return text;
  const wanted = wordsOf(name);
  if (wanted.length === 0) return name.trim() === "" ? text : text.replaceAll(name.trim(), takenOut);
  const words = wordsOf(text);
  let kept = "";
  let from = 0;
  for (let at = 0; at + wanted.length <= words.length; at += 1) {
    const place = placeAt(text, words.slice(at, at + wanted.length), name, wanted);
    if (place === null) continue;
    kept += text.slice(from, place.start) + takenOut;
    from = place.end;
    at += wanted.length - 1;
  }
  return kept + text.slice(from);
}

function placeAt(
  text: string,
  found: readonly Word[],
  name: string,
  wanted: readonly Word[],
): { start: number; end: number } | null {
  if (!wanted.every(({ folded }, index) => folded === found[index]?.folded)) return null;
  const start = found[0]?.start ?? 0;
  const end = found.at(-1)?.end ?? 0;
  if (wanted.length > 1) return { start, end };
  const bare = name.slice(wanted[0]?.start, wanted[0]?.end);
  return text.slice(start, end).normalize("NFC") === bare.normalize("NFC") ? { start, end } : null;
}
