import fc from "fast-check";
import type { PushUpAttempt } from "../../../../electron/domain/tests/push-up/protocol.ts";
import type { Examples } from "../examples.ts";

/** Runs of "." and "x", three misses in a row among them often enough. */
export const cadences = fc
  .array(fc.constantFrom(".", ".", "x"), { maxLength: 60 })
  .map((signs) => signs.join(""));

const none = fc.constant({});
const cadence = fc.record({ cadence: fc.integer({ min: 1, max: 12 }) });

const pushUpAttempts: fc.Arbitrary<PushUpAttempt> = fc.oneof(
  cadences.map((seen) => ({ how: "cadences" as const, cadences: seen })),
  fc
    .tuple(fc.integer({ min: 0, max: 999 }), fc.integer({ min: 0, max: 3 }))
    .map(([reps, off]) => ({ how: "tally" as const, reps, offAtEnd: Math.min(reps, off) })),
);

export const pushUpExamples: Examples = {
  attempts: pushUpAttempts,
  usual: fc.record({ how: fc.constant("tally"), reps: fc.nat(60), offAtEnd: fc.nat(3) }),
  believable: fc
    .integer({ min: 4, max: 60 })
    .map((done) => ({ how: "tally", reps: done, offAtEnd: Math.min(done, 3) })),
  taps: fc.oneof(
    { weight: 8, arbitrary: fc.tuple(fc.constant("off"), fc.oneof(none, cadence)) },
    fc.tuple(fc.constant("on-again"), cadence),
    fc.tuple(fc.constant("stop"), fc.oneof(none, cadence)),
    fc.tuple(
      fc.constant("last"),
      fc.record({ cadence: fc.integer({ min: 1, max: 12 }), done: fc.boolean() }),
    ),
  ),
};
