import type { Written } from "../../../electron/domain/tests/protocol.ts";

/** One mark of an athlete's history of one fingerprint. */
export interface HistoryPoint {
  /** ISO 8601 day. */
  readonly date: string;
  /** Grains of the test. */
  readonly value: number;
  /** The same as people read it. */
  readonly written: Written;
  /** True for the mark of the day at hand: it stands out, and the band is that of the test before it. */
  readonly today?: boolean;
}

/** The marks that are no news after the last test, in grains (`noiseBand`). */
export interface Noise {
  readonly low: number;
  readonly high: number;
}

/** page: beside its table, answers to pointer and keys. card: still, for paper. */
export type PlotSize = "page" | "card";

/** Oldest first; of one day in the order given, today's last. */
export function inOrder(points: readonly HistoryPoint[]): HistoryPoint[] {
  return points.toSorted(
    (a, b) => a.date.localeCompare(b.date) || Number(a.today ?? false) - Number(b.today ?? false),
  );
}

/** The test that the noise band is about: the one before today's, or the newest where today has none. */
export function lastTestOf(points: readonly HistoryPoint[]): HistoryPoint | undefined {
  const newest = points.at(-1);
  return newest?.today === true ? points.at(-2) : newest;
}
