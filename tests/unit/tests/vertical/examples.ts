import fc from "fast-check";
import type { VerticalAttempt } from "../../../../electron/domain/tests/vertical/protocol.ts";
import type { Examples } from "../examples.ts";

const none = fc.constant({});

const verticalAttempts: fc.Arbitrary<VerticalAttempt> = fc.record(
  {
    standingReach: fc.integer({ min: 0, max: 5000 }),
    touchReach: fc.integer({ min: 0, max: 5000 }),
    bodyMass: fc.integer({ min: 0, max: 500_000 }),
  },
  { requiredKeys: ["standingReach", "touchReach"] },
);

export const verticalExamples: Examples = {
  attempts: verticalAttempts,
  usual: fc.record({
    standingReach: fc.integer({ min: 1900, max: 2400 }),
    touchReach: fc.integer({ min: 2100, max: 3000 }),
  }),
  believable: fc
    .integer({ min: 2200, max: 2700 })
    .map((touch) => ({ standingReach: 2100, touchReach: touch })),
  taps: fc.oneof(
    fc.tuple(fc.constant("reach"), fc.record({ mm: fc.integer({ min: 1900, max: 2400 }) })),
    {
      weight: 4,
      arbitrary: fc.tuple(fc.constant("touch"), fc.record({ mm: fc.integer({ min: 2400, max: 3000 }) })),
    },
    fc.tuple(fc.constant("enough"), none),
  ),
};
