import type { Progress } from "./told.ts";

/** A long calculation: it yields how far it is and can be left at any of these points. */
export type Calculation<Result> = Generator<Progress, Result, undefined>;

/** Runs a calculation to its end at once. */
export function finished<Result>(calculation: Calculation<Result>): Result {
  for (;;) {
    const step = calculation.next();
    if (step.done === true) return step.value;
  }
}

/** Passes a calculation's progress on as a part of a longer one's. */
export function* within<Result>(
  calculation: Calculation<Result>,
  from: Progress,
  until: Progress,
): Calculation<Result> {
  for (;;) {
    const step = calculation.next();
    if (step.done === true) return step.value;
    yield from + (until - from) * step.value;
  }
}
