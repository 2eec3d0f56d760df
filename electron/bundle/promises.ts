import type { Contents } from "./contents.ts";

/** Writes the model's statement for a stranger: the attackers considered, the promises, and their limits. */
export function whatIsPromised(contents: Contents): string {
  const { strictness, likeness, kind, suppressed } = contents;
  const { k, l, suppression } = strictness;
  const isHeld = suppressed.some(
    ({ reason }) => reason === "rare" || reason === "too-few" || reason === "left-alone",
  );
  const held = isHeld
    ? "Results for which there were too few others were suppressed."
    : "No result had to be suppressed for that.";
  const least =
    likeness.k === null
      ? "Nothing was left to report."
      : `The smallest group here has ${likeness.k} athletes.`;
  return `## What was done so that nobody can be found

Against whom: somebody who was in the hall, saw the big screen, wrote down every result by bib, knows everybody's league,
category and rough age, and knows who agreed to sharing. So a result counts as something that is known, not as a secret.

- Not included: name, number, bib, league, year of birth, date, devices, volunteers, notes, order of entry and exact results.
- ${kind === "marks" ? inMarks(k) : inProfiles(k)} (k-anonymity after Sweeney, with the results
  counted as quasi-identifiers).
  ${held}
  ${least}
- In every group of equal age band, category, league size and quarter as reported, each test has at least ${l} different
  intervals (distinct l-diversity after Machanavajjhala and others).
- A league size is reported only where athletes of two or more leagues share everything else that is reported beside
  the results.
- Of the records reported in the same way at most ${Math.round(suppression * 100)} in a hundred were suppressed for being rare; where that was not enough,
  all of them were.
- Of all ways to report the rest that keep to this, the one that loses least was chosen, found by trying all.
- Before it was written, the program tried these very rows as that person could. Nobody was found for certain, and no
  guess had a chance above one in ${k}.
- It also tried them as somebody who wrote down everybody but those hidden on the big screen, and crossed those off: no result of
  a hidden person was left with a single interval. Results that would have been were suppressed.
- Each testing day is shared in one file. A second one with other rows could be subtracted from it.
- Only complete results of athletes who agreed to sharing; of those who may be under 18, only with a guardian's consent.

What is not promised: that nobody can tell who shared; that somebody who is in a group does not know ${k - 1} others
instead of ${k}; that an age band or a category stays hidden from somebody who knows the result; anything against somebody who
has the data file of the program itself, or the exact results of nearly everybody in a group and asks about the
last one. Where results of hidden people are all that is left, a guess between two intervals may well be right.`;
}

function inMarks(k: number): string {
  return `At least ${k} different athletes, its own counted, share all that a row says, its interval too, and the rows of one
  athlete are not linked`;
}

function inProfiles(k: number): string {
  return `At least ${k} different athletes, its own counted, share all that a row says, all of its intervals together and
  which tests were done`;
}
