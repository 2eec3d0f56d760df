/**
 * The code on the badge of somebody who has no bib yet: it opens them at check-in, and at a station it is nobody's bib.
 * Letters and digits alone, since keyboards of all languages have those on the keys that a scanner presses.
 */
export function badgeCode(athleteId: number): string {
  return `TL${athleteId}`;
}

/** Returns the athlete whom a scanned or typed badge code means; null for any other text. */
export function athleteOfBadge(text: string): number | null {
  const digits = /^TL(?<id>\d{1,9})$/i.exec(text.trim())?.groups?.id;
  return digits === undefined ? null : Number(digits);
}
