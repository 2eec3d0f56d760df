import { expect, test } from "vitest";
import { after, estimatedBoot, msBetween, sameBoot } from "../../../electron/domain/heats/clock.ts";

const start = { ms: 1_000_000.25, boot: "one", wall: "2026-11-14T09:00:00.000Z" };

test("a wall clock that jumps changes nothing while the machine runs", () => {
  for (const wall of ["2026-11-14T08:04:00.000Z", "2026-11-14T10:04:00.000Z"]) {
    expect(msBetween(start, { ms: 1_240_000.5, boot: "one", wall })).toEqual({
      ms: 239_999.999 + 0.251,
      clock: "monotonic",
    });
  }
});

test("after the machine started anew, wall time has to do", () => {
  const later = { ms: 30_000, boot: "two", wall: "2026-11-14T09:04:00.000Z" };
  expect(msBetween(start, later)).toEqual({ ms: 240_000, clock: "wall" });
  // A clock of the same name that ran backwards by minutes is not the same clock.
  expect(msBetween(start, { ...later, boot: "one" })).toEqual({ ms: 240_000, clock: "wall" });
});

test("time 0 may be ahead: that is the count-in", () => {
  const zero = after(start, 6000);
  expect(zero).toEqual({ ms: 1_006_000.25, boot: "one", wall: "2026-11-14T09:00:06.000Z" });
  expect(msBetween(zero, start)).toEqual({ ms: -6000, clock: "monotonic" });
});

test("an estimated start of the machine is the same one within half a minute", () => {
  const [first, drifted] = [
    estimatedBoot(500_000, 1_800_000_000_000),
    estimatedBoot(900_000, 1_800_000_420_000),
  ];
  expect([first, drifted]).toEqual(["estimate:1799999500", "estimate:1799999520"]);
  expect(sameBoot(first, drifted)).toBe(true);
  expect(sameBoot(first, estimatedBoot(100_000, 1_800_000_420_000))).toBe(false);
  expect(sameBoot(first, "one")).toBe(false);
  expect(sameBoot("one", "one")).toBe(true);
});
