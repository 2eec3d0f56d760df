import type { Cue } from "../tests/cue.ts";
import { definitionOf, type ParametersOf, type TestCode } from "../tests/registry.ts";

/**
 * All cues of a test from `fromMs` (included) to `untilMs` (not included), in the order of time. Ask for a little more
 * than is about to be heard, again and again: the answer depends on nothing but the times.
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
