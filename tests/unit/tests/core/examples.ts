import fc from "fast-check";
import type { CoreAttempt } from "../../../../electron/domain/tests/core/protocol.ts";
import type { Examples } from "../examples.ts";

const none = fc.constant({});

const coreAttempts: fc.Arbitrary<CoreAttempt> = fc.record({
  held: fc.integer({ min: 0, max: 4_000_000 }),
});

export const coreExamples: Examples = {
  attempts: coreAttempts,
  usual: fc.record({ held: fc.nat(260).map((seconds) => seconds * 1000) }),
  believable: fc.integer({ min: 15, max: 500 }).map((seconds) => ({ held: 1000 * seconds })),
  taps: fc.tuple(fc.constant("stop"), none),
};
