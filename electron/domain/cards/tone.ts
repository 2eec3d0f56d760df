import type { Verdict } from "../statistics/change.ts";
import type { Standing } from "../statistics/standing.ts";

/**
 * What a card as a whole has to tell: nothing to compare yet; gains alone; losses alone; both; nothing beyond noise,
 * with or without a new best in it.
 */
export type Tone = "first" | "gain" | "dip" | "mixed" | "best" | "steady";

/** The tone of the marks of one day; what the verdicts don't say, the tone does not say either. */
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

/**
 * Which of `count` wordings an athlete gets on a day: neighbours and days differ, and printing again says the same.
 * @param date ISO 8601 day.
 */
export function wordingOf(athleteId: number, date: string, count: number): number {
  const days = Math.floor(Date.parse(`${date}T00:00:00Z`) / 86_400_000);
  return (athleteId + days) % count;
}
