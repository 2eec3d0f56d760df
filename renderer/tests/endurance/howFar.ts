import type { EnduranceParameters } from "../../../electron/domain/tests/endurance/protocol.ts";

/** Reps before each exercise of a round: where somebody is who has just begun it. */
export function repsBefore({ exercises }: EnduranceParameters): number[] {
  return exercises.map((_exercise, index) =>
    exercises.slice(0, index).reduce((sum, { count }) => sum + count, 0),
  );
}

/** Which exercise somebody is in after so many reps of a round. */
export function exerciseAt(parameters: EnduranceParameters, reps: number): number {
  return repsBefore(parameters).findLastIndex((before) => before <= reps);
}

/** A whole round is a round, so there is always a rep less. */
export function mostReps({ exercises }: EnduranceParameters): number {
  return exercises.reduce((sum, { count }) => sum + count, 0) - 1;
}

export function withinRound(parameters: EnduranceParameters, reps: number): number {
  return Math.min(mostReps(parameters), Math.max(0, reps));
}
