import type { Length } from "../electron/domain/length.ts";

/** A length read in whole or half centimetres. */
export function cm(count: number): Length {
  return { unit: "cm", halves: 2 * count };
}

/** A length read in whole, half or quarter inches. */
export function inches(count: number): Length {
  return { unit: "in", quarters: 4 * count };
}
