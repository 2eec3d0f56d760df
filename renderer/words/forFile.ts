/** What file systems and the shell take no part of a name for. */
const forbidden = /[\p{Cc}\\/:*?"<>|]+/gu;
/** Leaves room for the date, the paper and the ending in the 120 characters that a name may have. */
const longest = 60;

/** A league's or an athlete's name as part of a file's name: without what no file system takes, and not too long. */
export function forFile(name: string): string {
  const plain = name.replaceAll(forbidden, " ").replaceAll(/\s+/g, " ").trim();
  let kept = "";
  // Whole characters, counted as the shell counts them.
  for (const character of plain) {
    if (kept.length + character.length > longest) break;
    kept += character;
  }
  return kept.trim();
}
