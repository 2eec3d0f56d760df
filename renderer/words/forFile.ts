/** Characters that file systems and the shell forbid in a name. */
const forbidden = /[\p{Cc}\\/:*?"<>|]+/gu;
/** Leaves room for date, paper and ending in the 120 characters of a name. */
const longest = 60;

/** Makes a league's or an athlete's name fit a file name: no forbidden characters, and not too long. */
export function forFile(name: string): string {
  const plain = name.replaceAll(forbidden, " ").replaceAll(/\s+/g, " ").trim();
  let kept = "";
  // Whole characters, in the shell's way of counting.
  for (const character of plain) {
    if (kept.length + character.length > longest) break;
    kept += character;
  }
  return kept.trim();
}
