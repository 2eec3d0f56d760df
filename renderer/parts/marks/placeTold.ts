/** Widest band of a hundred that still says anything of a place. Ours, no source. */
const widestTold = 60;

/** How a place is told: as a band, as its upper or lower end alone, or not, because it reaches too far. */
export type PlaceTold = "anywhere" | "wide" | "bottom" | "top" | "band";

/** Returns how the place between two shares of a hundred is told. */
export function placeTold({ low, high }: { readonly low: number; readonly high: number }): PlaceTold {
  if (low === 0 && high === 100) return "anywhere";
  if (high - low > widestTold) return "wide";
  if (low === 0) return "bottom";
  return high === 100 ? "top" : "band";
}
