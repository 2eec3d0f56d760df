import type { Verdict } from "../statistics/change.ts";
import type { Standing } from "../statistics/standing.ts";

/** A card's message: nothing to compare yet; gains; losses; both; nothing beyond noise, with or without a best. */
export type Tone = "first" | "gain" | "dip" | "mixed" | "best" | "steady";

/** Returns the tone of one day's marks; it never says more than their verdicts. */
export function toneOf(
  marks: readonly { readonly standing: Standing; readonly verdict: Verdict | null }[],
): Tone {
  const verdicts = marks.flatMap(({ verdict }) => verdict ?? []);
  if (verdicts.length === 0) return "first";
  const gained = verdicts.some((verdict) => verdict.endsWith("gain"));
  const lost = verdicts.some((verdict) => verdict.endsWith("loss"));
  if (gained || lost) return gained && lost ? "mixed" : gained ? "gain" : "dip";
  return marks.some(({ standing }) => standing === "best") ? "best" : "steady";
}

/** Picks one of `count` wordings: neighbours and days (ISO 8601) differ, and a reprint says the same. */
export function wordingOf(athleteId: number, date: string, count: number): number {
  const days = Math.floor(Date.parse(`${date}T00:00:00Z`) / 86_400_000);
  return (athleteId + days) % count;
}
