import { type EnduranceParameters, endurance } from "../../../electron/domain/tests/endurance/protocol.ts";
import { formatTime } from "../../../electron/domain/units.ts";

/** Returns the reps of a round before each exercise, that is at its start. */
export function repsBefore({ exercises }: EnduranceParameters): number[] {
  return exercises.map((_exercise, index) =>
    exercises.slice(0, index).reduce((sum, { count }) => sum + count, 0),
  );
}

/** Returns the exercise reached after `reps` reps of a round. */
export function exerciseAt(parameters: EnduranceParameters, reps: number): number {
  return repsBefore(parameters).findLastIndex((before) => before <= reps);
}

/** Returns the most reps of an unfinished round: one less than a whole one. */
export function mostReps({ exercises }: EnduranceParameters): number {
  return exercises.reduce((sum, { count }) => sum + count, 0) - 1;
}

export function withinRound(parameters: EnduranceParameters, reps: number): number {
  return Math.min(mostReps(parameters), Math.max(0, reps));
}

/** Formats a circuit's time as scored: hundredths are rounded up to the next tenth, by the protocol's own rule. */
export function writeSplit(parameters: EnduranceParameters, ms: number): string {
  const mark = endurance.score(parameters, [{ finished: true, time: Math.ceil(ms) }]);
  return mark.state === "complete" ? formatTime(mark.value, true) : "";
}
