import { protocolOf, type TestCode } from "../tests/registry.ts";
import { gain, startingTypicalErrors, type Verdict, verdict } from "./change.ts";
import { type Standing, standingOf } from "./standing.ts";

/** A complete mark's place in the athlete's own history; all values and gains in the test's grains. */
export interface MarkNews {
  readonly standing: Standing;
  /** Best mark before this one; null for a first mark. */
  readonly bestBefore: number | null;
  /** Improvement over the best before; positive is better, whichever way the test counts. */
  readonly gainOverBest: number | null;
  /** The mark of the last test. */
  readonly previous: number | null;
  readonly previousDate: string | null;
  /** Improvement over the last test. */
  readonly change: number | null;
  /** The verdict on that change, against the test's noise. */
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
 * typical error for judging the change.
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
