import type { Cue } from "../tests/cue.ts";
import { definitionOf, type ParametersOf, type TestCode } from "../tests/registry.ts";

/**
 * Returns all cues of a test from `fromMs` (included) to `untilMs` (excluded), by time. Ask again and again for a
 * little more than is about to be heard: the answer depends only on the times.
 */
export function cuesBetween<Test extends TestCode>(
  test: Test,
  parameters: ParametersOf<Test>,
  fromMs: number,
  untilMs: number,
): Cue[] {
  const all = definitionOf(test).cues(parameters, fromMs, untilMs);
  return all.filter(({ atMs }) => atMs >= fromMs && atMs < untilMs);
}
