import type { SummaryAttempt, SummaryDay } from "./day.ts";

/** An attempt that was entered and no longer stands. */
export interface CorrectedAttempt {
  readonly attempt: SummaryAttempt;
  readonly ended: NonNullable<SummaryAttempt["void"]>;
  /** The attempt entered in its place, standing or void in turn; null for none. */
  readonly instead: SummaryAttempt | null;
}

/** Returns every corrected or voided attempt, in the order of correction. */
export function correctionsOf({ attempts }: SummaryDay): CorrectedAttempt[] {
  const instead = new Map(
    attempts.flatMap((each) => (each.replaces === null ? [] : [[each.replaces, each]])),
  );
  return attempts
    .flatMap((attempt) => {
      const { void: ended } = attempt;
      return ended === null ? [] : [{ attempt, ended, instead: instead.get(attempt.id) ?? null }];
    })
    .sort((a, b) => order(a.ended.at, b.ended.at) || a.attempt.seq - b.attempt.seq);
}

function order(a: string, b: string): number {
  return a === b ? 0 : a < b ? -1 : 1;
}
