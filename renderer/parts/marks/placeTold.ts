import type { PlaceAmongOthers } from "../../../electron/api/place/among.ts";

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

/** Returns the kind of those that a place is among: halls of a table are counted, another origin is named. */
export function placeAmong({ group, halls }: Pick<PlaceAmongOthers, "group" | "halls">) {
  if (halls === null) return group;
  return group === "mixed" ? "tableMixed" : "table";
}
