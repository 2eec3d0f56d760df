import fc from "fast-check";
import { expect, test } from "vitest";
import { type SentStart, startOf } from "../../../electron/domain/heats/start.ts";

/**
 * The bound of a reading is that of F. Cristian, "Probabilistic clock synchronization", Distributed Computing 3 (1989),
 * 146–158; that nothing is heard of before it was sent needs no source.
 */

const heardAt = (ms: number) => ({ ms, boot: "b", wall: "2026-11-14T09:00:00.000Z" });
const short = fc.double({ min: 0.01, max: 5_000, noNaN: true });

test("however long a start was under way, it began within the doubt that is told, and never after it was sent", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1e6, max: 1e9, noNaN: true }),
      fc.double({ min: 0, max: 60_000, noNaN: true }),
      fc.double({ min: 0, max: 100_000, noNaN: true }),
      short,
      // Not quite at the ends, where the last bit of a double decides whether a reading is believed.
      fc.double({ min: -0.999, max: 0.999, noNaN: true }),
      (tapMs, startedAgoMs, underWayMs, doubtMs, error) => {
        const tapped = { ms: tapMs + error * doubtMs, boot: "b", doubtMs };
        const start = startOf({ startedAgoMs, tapped }, heardAt(tapMs + startedAgoMs + underWayMs));
        const off = Math.abs(start.at.ms - tapMs);
        // Doubles near 1e9 ms are exact to a millionth of a ms.
        expect(off).toBeLessThanOrEqual((start.doubtMs ?? Number.NaN) + 1e-5);
        expect(start.doubtMs).toBeLessThanOrEqual(2 * doubtMs + 1e-5);
        expect(start.at.ms).toBeLessThanOrEqual(tapMs + underWayMs + 1e-5);
      },
    ),
  );
});

test("a start that was heard of at once is the reading, or the moment it was sent if that is earlier", () => {
  const sent = (ms: number): SentStart => ({ startedAgoMs: 10, tapped: { ms, boot: "b", doubtMs: 20 } });
  expect(startOf(sent(1_000), heardAt(5_000))).toMatchObject({ at: { ms: 1_000 }, doubtMs: 20 });
  // Sent at 990: the tap was between 980 and then.
  expect(startOf(sent(1_000), heardAt(1_000))).toMatchObject({ at: { ms: 990 }, doubtMs: 10 });
});

test("an age that contradicts the reading is not believed: a page began anew after its wall clock was set", () => {
  const tapped = { ms: 500_000, boot: "b", doubtMs: 5 };
  const start = startOf({ startedAgoMs: 400_000, tapped }, heardAt(503_000));
  expect(start).toMatchObject({ at: { ms: 500_000 }, doubtMs: 5 });
});

test.each([
  ["no reading", null],
  ["of another boot", { ms: 999_000, boot: "a", doubtMs: 1 }],
  ["of the future", { ms: 1_001_000, boot: "b", doubtMs: 1 }],
  ["of long ago", { ms: 1_000, boot: "b", doubtMs: 1 }],
])("%s: the tap's age alone counts, and how late it was heard of is not known", (_name, tapped) => {
  const start = startOf({ startedAgoMs: 40, tapped }, heardAt(1_000_000));
  expect(start).toEqual({ at: { ...heardAt(999_960), wall: "2026-11-14T08:59:59.960Z" }, doubtMs: null });
});
