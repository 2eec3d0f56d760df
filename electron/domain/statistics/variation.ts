import { ofEachTest, type TestCode } from "../tests/registry.ts";
import { startingTypicalErrors, type TypicalError } from "./change.ts";
import { assumedDrift, type Drift } from "./drift.ts";
import { assumedHall } from "./hall.ts";
import { assumedLearning } from "./learning.ts";
import type { Shared } from "./shared.ts";

/**
 * How marks of a test vary: from day to day when nothing has changed, by how much athletes truly change, and by what
 * moves all of them.
 */
export interface Variation extends Shared {
  readonly error: TypicalError;
  readonly drift: Drift;
}

export type Variations = Readonly<Record<TestCode, Variation>>;

/** What a store without marks of its own assumes. */
export const startingVariations: Variations = Object.freeze(
  ofEachTest((test) => ({
    error: startingTypicalErrors[test],
    drift: assumedDrift,
    learning: assumedLearning,
    hall: assumedHall,
  })),
);
