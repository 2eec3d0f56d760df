import fc from "fast-check";
import type { AgilityAttempt } from "../../../electron/domain/tests/agility/protocol.ts";
import type { CoreAttempt } from "../../../electron/domain/tests/core/protocol.ts";
import type { EnduranceAttempt } from "../../../electron/domain/tests/endurance/protocol.ts";
import type { PushUpAttempt } from "../../../electron/domain/tests/push-up/protocol.ts";
import type { TestCode } from "../../../electron/domain/tests/registry.ts";
import type { VerticalAttempt } from "../../../electron/domain/tests/vertical/protocol.ts";

/** Runs of "." and "x", three misses in a row among them often enough. */
export const cadences = fc
  .array(fc.constantFrom(".", ".", "x"), { maxLength: 60 })
  .map((signs) => signs.join(""));

export const pushUpAttempts: fc.Arbitrary<PushUpAttempt> = fc.oneof(
  cadences.map((seen) => ({ how: "cadences" as const, cadences: seen })),
  fc
    .tuple(fc.integer({ min: 0, max: 999 }), fc.integer({ min: 0, max: 3 }))
    .map(([reps, off]) => ({ how: "tally" as const, reps, offAtEnd: Math.min(reps, off) })),
);

export const agilityAttempts: fc.Arbitrary<AgilityAttempt> = fc.record({
  direction: fc.constantFrom("cw" as const, "ccw" as const),
  laps: fc.integer({ min: 0, max: 99 }),
  extra: fc.integer({ min: 0, max: 3 }),
  touches: fc.integer({ min: 0, max: 99 }),
});

export const verticalAttempts: fc.Arbitrary<VerticalAttempt> = fc.record(
  {
    standingReach: fc.integer({ min: 0, max: 5000 }),
    touchReach: fc.integer({ min: 0, max: 5000 }),
    bodyMass: fc.integer({ min: 0, max: 500_000 }),
  },
  { requiredKeys: ["standingReach", "touchReach"] },
);

export const coreAttempts: fc.Arbitrary<CoreAttempt> = fc.record({
  held: fc.integer({ min: 0, max: 4_000_000 }),
});

export const enduranceAttempts: fc.Arbitrary<EnduranceAttempt> = fc.oneof(
  fc.record({ finished: fc.constant(true as const), time: fc.integer({ min: 0, max: 4_000_000 }) }),
  fc.record({
    finished: fc.constant(false as const),
    roundsDone: fc.integer({ min: 0, max: 9 }),
    repsDone: fc.integer({ min: 0, max: 2400 }),
  }),
);

/** Attempts of every test, all of a shape that the door lets in. */
export const attemptsOf: Readonly<Record<TestCode, fc.Arbitrary<unknown>>> = {
  "push-up": pushUpAttempts,
  agility: agilityAttempts,
  vertical: verticalAttempts,
  core: coreAttempts,
  endurance: enduranceAttempts,
};
