import { holdTogether } from "../statistics/holm.ts";
import type { MarkNews } from "../statistics/news.ts";

/**
 * The overall message of a card: nothing to compare yet; gains only; losses only; both; nothing beyond noise, with or
 * without a new best.
 */
export type Tone = "first" | "gain" | "dip" | "mixed" | "best" | "steady";

/** The share of athletes who stayed the same and whose card says all the same that something moved, at most. */
const wrongTones = 0.2;

/**
 * Returns the tone of one day's marks. It looks at all of them at once, so it asks more of each than its own verdict
 * does: of five tests of somebody who stayed the same, two are "likely" something, for better or for worse.
 */
export function toneOf(marks: readonly Pick<MarkNews, "standing" | "beyond" | "byChance">[]): Tone {
  const compared = marks.flatMap(({ beyond, byChance }) =>
    beyond === null || byChance === null ? [] : [{ beyond, byChance }],
  );
  if (compared.length === 0) return "first";
  const held = holdTogether(
    compared.map(({ byChance }) => byChance),
    wrongTones,
  );
  const moved = compared.filter((_each, at) => held[at]);
  const gained = moved.some(({ beyond }) => beyond > 0);
  const lost = moved.some(({ beyond }) => beyond < 0);
  if (gained || lost) return gained && lost ? "mixed" : gained ? "gain" : "dip";
  return marks.some(({ standing }) => standing === "best") ? "best" : "steady";
}

/**
 * What single tests say by their own verdicts that the tone does not: lower, higher: another one is a loss, or a gain;
 * single: some are likely something, and all together are not.
 */
export type Besides = "lower" | "higher" | "single";

/** Returns what has to be said beside a tone, so that it does not contradict the tests under it; null for nothing. */
export function besidesOf(tone: Tone, marks: readonly Pick<MarkNews, "verdict">[]): Besides | null {
  const says = (way: string) => marks.some(({ verdict }) => verdict?.endsWith(way));
  if (tone === "gain") return says("loss") ? "lower" : null;
  if (tone === "dip") return says("gain") ? "higher" : null;
  if (tone === "first" || tone === "mixed") return null;
  return says("loss") || says("gain") ? "single" : null;
}

/**
 * Picks one of `count` wordings for an athlete on a day: neighbours and days differ, and a reprint says the same.
 * @param date ISO 8601 day.
 */
export function wordingOf(athleteId: number, date: string, count: number): number {
  const days = Math.floor(Date.parse(`${date}T00:00:00Z`) / 86_400_000);
  return (athleteId + days) % count;
}
