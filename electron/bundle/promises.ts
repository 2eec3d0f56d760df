import type { Contents } from "./contents.ts";

/** Writes the model's statement for a stranger: the attackers considered, the promises, and their limits. */
export function whatIsPromised(contents: Contents): string {
  const { strictness, likeness, kind, suppressed } = contents;
  const { k, l, suppression } = strictness;
  const isHeld = suppressed.some(
    ({ reason }) => reason === "rare" || reason === "too-few" || reason === "left-alone",
  );
  const held = isHeld
    ? "Marks for which no such company was found were held back."
    : "No mark had to be held back for that.";
  const least =
    likeness.k === null ? "Nothing was left to tell." : `The smallest group here has ${likeness.k} athletes.`;
  return `## What was done so that nobody can be found

Against whom: a neighbour who was in the hall, saw the board, noted every mark by bib, knows everybody's league, category
and rough age, and knows who agreed to share. So a mark counts as something that is known, not as a secret.

- Left out: name, number, bib, league, year of birth, date, devices, volunteers, notes, order of entry and exact marks.
- ${kind === "marks" ? inMarks(k) : inProfiles(k)} (k-anonymity after Sweeney, with the marks
  counted as quasi-identifiers). ${held} ${least}
- In every group of equal age band, category, league size and quarter as told, each test has at least ${l} different
  intervals (distinct l-diversity after Machanavajjhala and others).
- A league size is told only where athletes of two leagues and more share everything else that is told beside the marks.
- Of the records told alike at most ${Math.round(suppression * 100)} in a hundred were held back for being rare; where that was not enough, all
  of them were.
- Of all ways to tell the rest that keep to this, the one that loses least was taken, found by trying all.
- Before it was written, the program played that neighbour against these very rows. Nobody was found for certain, and no
  guess was likelier than one in ${k}.
- It also played one who noted everybody but those whom the board hides, and took those off: of no mark of a hidden one
  a single interval was left. Marks of which one would have been left were held back.
- Of one testing day one bundle is made. A second one with other rows could be subtracted from it.
- Only complete marks of athletes who agreed to share; of those who may be under 18, only with a guardian's consent.

What is not promised: that nobody can tell who shared; that a neighbour who is in a group does not know ${k - 1} others
instead of ${k}; that an age band or a category stays hidden from somebody who knows the mark; anything against somebody who
has the store itself, or the exact marks of nearly everybody in a group and asks about the last one. Where marks of
hidden people are all that is left, a guess between two intervals may well be right.`;
}

function inMarks(k: number): string {
  return `At least ${k} different athletes, its own counted, stand behind all that a row says, its interval too, and the rows of one
  athlete are not linked`;
}

function inProfiles(k: number): string {
  return `At least ${k} different athletes, its own counted, stand behind all that a row says, all of its intervals together and
  which tests were done`;
}
