import { type ErrorParts, errorAt } from "./change.ts";
import { levelOf } from "./level.ts";
import type { DatedValue } from "./repeats.ts";

/** What athletes gain from one visit to the next by knowing the test. */
interface LearningStep {
  /** In typical errors; positive where marks grow, whichever way the test counts. */
  readonly by: number;
  /** Number of athletes behind it; 0: too few, and then it is assumed that nothing is gained. */
  readonly athletes: number;
}

/**
 * The learning of a test by visits, after Chelune et al. 1993 (Neuropsychology 7(1), 41–52) and Iverson 2001 (Archives
 * of Clinical Neuropsychology 16(2), 183–191; both from memory): what others gain by practice is taken off a change.
 */
export interface Learning {
  /** From the first visit to the second, the second to the third, and the third to the fourth; nothing after that. */
  readonly steps: readonly LearningStep[];
  /** How surely the steps are known: their covariances, in squares of the typical error. */
  readonly covariance: readonly (readonly number[])[];
}

/** Number of steps that are told apart. */
export const steps = 3;

const none = Array.from({ length: steps }, () => 0);

/** What is assumed while too few athletes came again: nobody learns, as if that were known. */
export const assumedLearning: Learning = Object.freeze({
  steps: none.map(() => ({ by: 0, athletes: 0 })),
  covariance: none.map(() => none),
});

/** Returns 1 for a visit (from 1) after a step (from 0), and 0 for one before it. */
export function isAfter(step: number, visit: number): number {
  return visit > step + 1 ? 1 : 0;
}

/** What the next visit has been taught more than a level has, in typical errors, and its variance. */
export interface Learnt {
  readonly by: number;
  readonly variance: number;
}

/**
 * Returns what the next visit gains over the level of these marks, which are all of one fingerprint, oldest first: the
 * level has the lessons of each visit by as much as that visit counts in it.
 */
export function learntSince(
  marks: readonly DatedValue[],
  learning: Learning,
  drift: number,
  noise: number,
): Learnt {
  const { steps: known } = learning;
  if (known.every(({ athletes }) => athletes === 0)) return { by: 0, variance: 0 };
  const more = known.map((_step, step) => {
    const had = marks.map(({ day }, at) => ({ day, value: isAfter(step, at + 1) }));
    return isAfter(step, marks.length + 1) - (levelOf(had, drift, noise)?.value ?? 0);
  });
  const by = known.reduce((sum, step, at) => sum + (more[at] ?? 0) * step.by, 0);
  return { by, variance: learningVariance(more, learning) };
}

/** Returns the variance of a sum of steps, each taken so often, in squares of the typical error. */
export function learningVariance(taken: readonly number[], { covariance }: Learning): number {
  return taken.reduce(
    (sum, one, row) =>
      sum + taken.reduce((all, other, at) => all + one * other * (covariance[row]?.[at] ?? 0), 0),
    0,
  );
}

/** Returns an athlete's marks, oldest first, without what their visits had gained by knowing the test. */
export function withoutLearning<Mark extends DatedValue>(
  marks: readonly Mark[],
  { steps: known }: Learning,
  error: ErrorParts,
): Mark[] {
  return marks.map((mark, at) => {
    const by = known.reduce((sum, step, index) => sum + step.by * isAfter(index, at + 1), 0);
    return by === 0 ? mark : { ...mark, value: mark.value - by * errorAt(mark.value, error) };
  });
}
