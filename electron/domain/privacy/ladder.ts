import type { Ladder } from "../tests/definition.ts";
import { definitionOf, ofEachTest } from "../tests/registry.ts";

/**
 * Fixed, so that steps compare between days and nothing about a day can be read from where its lines lie. The figures are
 * ours. Grains: reps, quarter landings, millimetres, seconds, milliseconds.
 */
export const ladders = Object.freeze(ofEachTest((test): Ladder => definitionOf(test).figures.ladder));
