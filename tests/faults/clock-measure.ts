import type { Page } from "@playwright/test";

/** A page's `performance.now()` against this machine's monotonic clock, which the table and this process read too. */
export interface PageOffset {
  /** What is added to a moment of the page, in ms. */
  readonly aheadMs: number;
  /** How far it may be off, in ms: half the time of the quickest look. */
  readonly doubtMs: number;
}

const looks = 60;

/** This machine's monotonic clock in ms, as `electron/host/monotonic.ts` reads it. */
export function machineMs(): number {
  return Number(process.hrtime.bigint()) / 1e6;
}

/** Compares both clocks through the browser's own pipe: nothing of the network between device and table is in it. */
export async function offsetOfPage(page: Page): Promise<PageOffset> {
  let best: PageOffset = { aheadMs: 0, doubtMs: Number.POSITIVE_INFINITY };
  for (let look = 0; look < looks; look += 1) {
    const from = machineMs();
    const shown = await page.evaluate(() => performance.now());
    const until = machineMs();
    const doubtMs = (until - from) / 2;
    if (doubtMs < best.doubtMs) best = { aheadMs: (from + until) / 2 - shown, doubtMs };
  }
  return best;
}

/** Returns a share of sorted values: 0.5 is the median, 1 the largest. */
export function shareOf(values: readonly number[], share: number): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.max(0, Math.ceil(sorted.length * share) - 1)] ?? Number.NaN;
}
