import fc from "fast-check";
import type { Length } from "../../../../electron/domain/length.ts";
import type { VerticalAttempt } from "../../../../electron/domain/tests/vertical/protocol.ts";
import { cm, inches } from "../../../lengths.ts";
import type { Examples } from "../examples.ts";

const none = fc.constant({});

const between = (from: number, to: number): fc.Arbitrary<Length> =>
  fc.oneof(
    fc.integer({ min: 2 * from, max: 2 * to }).map((halves) => cm(halves / 2)),
    fc
      .integer({ min: Math.ceil(from / 0.635), max: Math.floor(to / 0.635) })
      .map((quarters) => inches(quarters / 4)),
  );

const verticalAttempts: fc.Arbitrary<VerticalAttempt> = fc.record(
  {
    standingReach: between(0, 500),
    touchReach: between(0, 500),
    bodyMass: fc.integer({ min: 0, max: 500_000 }),
  },
  { requiredKeys: ["standingReach", "touchReach"] },
);

export const verticalExamples: Examples = {
  attempts: verticalAttempts,
  usual: fc.record({
    standingReach: between(190, 240),
    touchReach: between(210, 300),
  }),
  believable: between(220, 270).map((touch) => ({ standingReach: cm(210), touchReach: touch })),
  taps: fc.oneof(
    fc.tuple(fc.constant("reach"), fc.record({ length: between(190, 240) })),
    {
      weight: 4,
      arbitrary: fc.tuple(fc.constant("touch"), fc.record({ length: between(240, 300) })),
    },
    fc.tuple(fc.constant("enough"), none),
  ),
};
