import type { Written } from "../../../electron/domain/tests/protocol.ts";

/** One mark of an athlete's history of one fingerprint. */
export interface HistoryPoint {
  /** ISO 8601 day. */
  readonly date: string;
  /** In grains of the test. */
  readonly value: number;
  /** The same, formatted for people. */
  readonly written: Written;
  /** True for the mark of the current day: it stands out, and the band is that of the test before it. */
  readonly today?: boolean;
}

/** The marks that are no change after the last test, in grains (`noiseBand`). */
export interface Noise {
  readonly low: number;
  readonly high: number;
}

/** page: beside its table, reacts to pointer and keys. card: static, for paper. */
export type PlotSize = "page" | "card";

/** Sorts points oldest first; of one day in the order given, today's last. */
export function inOrder(points: readonly HistoryPoint[]): HistoryPoint[] {
  return points.toSorted(
    (a, b) => a.date.localeCompare(b.date) || Number(a.today ?? false) - Number(b.today ?? false),
  );
}

/** Returns the test of the noise band: the one before today's, or the newest if today has none. */
export function lastTestOf(points: readonly HistoryPoint[]): HistoryPoint | undefined {
  const newest = points.at(-1);
  return newest?.today === true ? points.at(-2) : newest;
}
