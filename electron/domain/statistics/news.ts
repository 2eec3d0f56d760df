import type { TestCode } from "../tests/registry.ts";
import { protocolOf } from "../tests/registry.ts";
import { gain, startingTypicalErrors, type Verdict, verdict } from "./change.ts";
import { type Standing, standingOf } from "./standing.ts";

/** A complete mark's place in the athlete's own history; all values and gains in the test's grains. */
export interface MarkNews {
  readonly standing: Standing;
  /** The best before this mark; null for a first mark. */
  readonly bestBefore: number | null;
  /** How much better than the best before, positive for an improvement whichever way is better. */
  readonly gainOverBest: number | null;
  /** The last test's mark. */
  readonly previous: number | null;
  readonly previousDate: string | null;
  /** How much better than the last test. */
  readonly change: number | null;
  /** Whether that change is more than the noise of the test. */
  readonly verdict: Verdict | null;
}

const firstMark: MarkNews = {
  standing: "first",
  bestBefore: null,
  gainOverBest: null,
  previous: null,
  previousDate: null,
  change: null,
  verdict: null,
};

/**
 * Compares a mark with the same athlete's earlier marks of the same protocol fingerprint, oldest first; `error` is the
 * typical error that the change is judged by.
 */
export function newsOf(
  test: TestCode,
  value: number,
  earlier: readonly { readonly date: string; readonly value: number }[],
  error = startingTypicalErrors[test],
): MarkNews {
  const last = earlier.at(-1);
  if (last === undefined) return firstMark;
  const { better, equalWithin } = protocolOf(test);
  const values = earlier.map((mark) => mark.value);
  const bestBefore = better === "higher" ? Math.max(...values) : Math.min(...values);
  return {
    standing: standingOf(better, value, values, equalWithin),
    bestBefore,
    gainOverBest: gain(better, bestBefore, value),
    previous: last.value,
    previousDate: last.date,
    change: gain(better, last.value, value),
    verdict: verdict(test, last.value, value, error),
  };
}
