import fc from "fast-check";
import type { EnduranceAttempt } from "../../../../electron/domain/tests/endurance/protocol.ts";
import type { Examples } from "../examples.ts";

const none = fc.constant({});

const enduranceAttempts: fc.Arbitrary<EnduranceAttempt> = fc.oneof(
  fc.record({ finished: fc.constant(true as const), time: fc.integer({ min: 0, max: 4_000_000 }) }),
  fc.record({
    finished: fc.constant(false as const),
    roundsDone: fc.integer({ min: 0, max: 9 }),
    repsDone: fc.integer({ min: 0, max: 2400 }),
  }),
);

export const enduranceExamples: Examples = {
  attempts: enduranceAttempts,
  usual: fc.record({ finished: fc.constant(true), time: fc.integer({ min: 200_000, max: 700_000 }) }),
  believable: fc.oneof(
    fc.integer({ min: 120_000, max: 600_000 }).map((time) => ({ finished: true, time })),
    fc.nat(50).map((repsDone) => ({ finished: false, roundsDone: 1, repsDone })),
  ),
  taps: fc.oneof(
    { weight: 4, arbitrary: fc.tuple(fc.constant("round"), none) },
    fc.tuple(fc.constant("not-finished"), fc.record({ repsDone: fc.nat(89) })),
  ),
};
