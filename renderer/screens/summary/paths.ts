/** Where the summary of a day stands, or of a league on it. */
export function pathOf(dayId: number, leagueId: number | null): string {
  return leagueId === null ? `/summary/${dayId}` : `/summary/${dayId}/${leagueId}`;
}

/** The same for paper, without the paper. */
export function printPathOf(dayId: number, leagueId: number | null): string {
  return `/print/summary/${dayId}/${leagueId ?? "all"}`;
}

/** A number of an address; undefined for none or for what is no number. */
export function idOf(part: string | undefined): number | undefined {
  return part !== undefined && /^\d{1,15}$/.test(part) ? Number(part) : undefined;
}
