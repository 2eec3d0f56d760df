/** The width of an interval of shares from which on people are told that it says little: a fifth of all. Ours, no source. */
const wide = 0.2;

/** Returns whether the interval of a share, which ends at nothing and at the whole, leaves much open. */
export function isWideShare({ low, high }: { readonly low: number; readonly high: number }): boolean {
  return Math.min(1, high) - Math.max(0, low) > wide;
}
