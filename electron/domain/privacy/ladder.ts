import type { Ladder } from "../tests/definition.ts";
import { definitionOf, ofEachTest } from "../tests/registry.ts";

/**
 * The ladder of each test. Fixed, so that steps compare between days and bounds reveal nothing about a day. The figures
 * are ours. Grains: reps, quarter landings, millimetres, seconds, milliseconds.
 */
export const ladders = Object.freeze(ofEachTest((test): Ladder => definitionOf(test).figures.ladder));
