import fc from "fast-check";
import type { AgilityAttempt } from "../../../../electron/domain/tests/agility/protocol.ts";
import type { Examples } from "../examples.ts";

const none = fc.constant({});
const side = fc.constantFrom("cw", "ccw");

export const agilityAttempts: fc.Arbitrary<AgilityAttempt> = fc.record({
  direction: fc.constantFrom("cw" as const, "ccw" as const),
  laps: fc.integer({ min: 0, max: 99 }),
  extra: fc.integer({ min: 0, max: 3 }),
  touches: fc.integer({ min: 0, max: 99 }),
});

export const agilityExamples: Examples = {
  attempts: agilityAttempts,
  usual: fc.record({
    direction: fc.constantFrom("cw", "ccw"),
    laps: fc.nat(12),
    extra: fc.nat(3),
    touches: fc.nat(5),
  }),
  believable: fc
    .tuple(
      fc.constantFrom("cw" as const, "ccw" as const),
      fc.integer({ min: 4, max: 9 }),
      fc.nat(3),
      fc.nat(3),
    )
    .map(([direction, laps, extra, touches]) => ({ direction, laps, extra, touches })),
  taps: fc.oneof(
    { weight: 2, arbitrary: fc.tuple(fc.constant("go"), fc.record({ direction: side })) },
    { weight: 8, arbitrary: fc.tuple(fc.constantFrom("landing", "touch"), none) },
    fc.tuple(fc.constantFrom("take", "false-start"), none),
    fc.tuple(fc.constant("count"), fc.record({ laps: fc.nat(9), extra: fc.nat(3), touches: fc.nat(4) })),
    fc.tuple(fc.constant("rerun"), fc.record({ direction: side, reason: fc.constant("A ball rolled in") })),
  ),
};
