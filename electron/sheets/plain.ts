/** Longer than any word that is looked for; a header may be as long as its file. */
const longest = 200;

/**
 * A header, or a word of a closed list, as people compare it: without letter case, accents, spaces and the marks that
 * stand around words, so that "Birth Year", "birth_year:" and "No." are found. What is nothing but such marks stays.
 */
export function plainHeader(header: string): string {
  if (header.length > longest) return header;
  const folded = header
    .normalize("NFKD")
    .replace(/\p{M}+/gu, "")
    .toLowerCase();
  return folded.replace(/[\s_\-.:;*?!¿¡()[\]/\\°'"’]+/g, "") || folded.trim();
}
