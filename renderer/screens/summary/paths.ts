/** Returns the path of a day's summary, or of one league's part of it. */
export function pathOf(dayId: number, leagueId: number | null): string {
  return leagueId === null ? `/summary/${dayId}` : `/summary/${dayId}/${leagueId}`;
}

/** Returns the path of the same summary on paper. */
export function printPathOf(dayId: number, leagueId: number | null): string {
  return `/print/summary/${dayId}/${leagueId ?? "all"}`;
}

/** Parses a number of an address; undefined if it is none. */
export function idOf(part: string | undefined): number | undefined {
  return part !== undefined && /^\d{1,15}$/.test(part) ? Number(part) : undefined;
}
