import { expect, test } from "vitest";
import { parseAttempt, protocolOf } from "../../electron/domain/tests/registry.ts";

/** An attempt whose own value is `amount`: reps, landings of one trial, mm jumped, seconds held, ms of a circuit. */
const attemptOf = {
  "push-up": (amount: number) => ({ how: "tally", reps: amount, offAtEnd: 0 }),
  agility: (amount: number) => {
    const landings = Math.ceil(amount);
    const touches = 2 * (landings - amount);
    return { direction: "cw", laps: Math.floor(landings / 4), extra: landings % 4, touches };
  },
  vertical: (amount: number) => ({
    standingReach: { unit: "mm", whole: 2000 },
    touchReach: { unit: "mm", whole: 2000 + amount },
  }),
  core: (amount: number) => ({ held: amount * 1000 }),
  endurance: (amount: number) => ({ finished: true, time: amount }),
};

// Ours, no source: ask outside the inner range, refuse outside the outer one; the limits themselves are still inside.
test.each<[keyof typeof attemptOf, number, "fine" | "ask" | "refuse"]>([
  ["push-up", 0, "ask"],
  ["push-up", 1, "fine"],
  ["push-up", 80, "fine"],
  ["push-up", 81, "ask"],
  ["push-up", 300, "ask"],
  ["push-up", 301, "refuse"],
  ["agility", 0, "ask"],
  ["agility", 11.5, "ask"],
  ["agility", 12, "fine"],
  ["agility", 45, "fine"],
  ["agility", 45.5, "ask"],
  ["agility", 80, "ask"],
  ["agility", 80.5, "refuse"],
  ["vertical", -1, "refuse"],
  ["vertical", 0, "ask"],
  ["vertical", 99, "ask"],
  ["vertical", 100, "fine"],
  ["vertical", 750, "fine"],
  ["vertical", 751, "ask"],
  ["vertical", 1300, "ask"],
  ["vertical", 1301, "refuse"],
  ["core", 0, "ask"],
  ["core", 14, "ask"],
  ["core", 15, "fine"],
  ["core", 600, "fine"],
  ["core", 601, "ask"],
  ["core", 3600, "ask"],
  ["core", 3601, "refuse"],
  ["endurance", 44_900, "refuse"],
  ["endurance", 45_000, "ask"],
  ["endurance", 119_900, "ask"],
  ["endurance", 120_000, "fine"],
  ["endurance", 900_000, "fine"],
  ["endurance", 900_001, "ask"],
  ["endurance", 3_600_000, "ask"],
  ["endurance", 3_600_001, "refuse"],
])("%s of %f: %s", (code, amount, level) => {
  const protocol = protocolOf(code);
  const parsed = parseAttempt(code, attemptOf[code](amount));
  expect(parsed.success).toBe(true);
  expect(protocol.plausibility(protocol.defaults, parsed.data).level).toBe(level);
});
