import { fold } from "../../domain/people/fold.ts";

/** Returns the candidate within a typing slip or two of `text`; undefined when none is that near. */
export function nearest(text: string, candidates: readonly string[]): string | undefined {
  const wanted = fold(text);
  const allowed = wanted.length < 5 ? 1 : 2;
  const [best] = candidates
    .map((candidate) => ({ candidate, slips: slipsBetween(wanted, fold(candidate), allowed) }))
    .filter(({ slips }) => slips <= allowed)
    .sort((a, b) => a.slips - b.slips);
  return best?.candidate;
}

/** Counts the characters to add, drop or change between two texts (Levenshtein 1966); stops above `allowed`. */
function slipsBetween(one: string, other: string, allowed: number): number {
  if (Math.abs(one.length - other.length) > allowed) return allowed + 1;
  let before = Array.from({ length: other.length + 1 }, (_, index) => index);
  for (let row = 1; row <= one.length; row += 1) {
    const now = [row];
    for (let column = 1; column <= other.length; column += 1) {
      const changed = (before[column - 1] ?? 0) + (one[row - 1] === other[column - 1] ? 0 : 1);
      now.push(Math.min(changed, (before[column] ?? 0) + 1, (now[column - 1] ?? 0) + 1));
    }
    before = now;
  }
  return before[other.length] ?? 0;
}
