import { Refusal } from "../refusal.ts";
import { sentence } from "../words.ts";
import { leastK } from "./rule.ts";

/** @throws Refusal `bad-input` when k is below {@link leastK}. */
export function requireK(k: number): void {
  if (!(k >= leastK)) throw new Refusal("bad-input", sentence("bundle.kTooSmall", { least: leastK }));
}

/** Returns the most records that may be suppressed: a whole number, never more than the share. */
export function limitOf(records: number, share: number): number {
  return Math.floor(records * share + 1e-9);
}
