import { randomUUID } from "node:crypto";
import { cm } from "../lengths.ts";

export const athletes = 300;
const tests = ["push-up", "agility", "vertical", "core", "endurance"] as const;
export const entries = athletes * tests.length;

/** What is entered n-th: everybody does one test, then everybody the next, in the order that the day holds. */
export function entryOf(ids: readonly number[], index: number): object {
  const test = tests[Math.floor(index / athletes)] ?? "push-up";
  const athleteId = ids[index % athletes];
  const attempts = seenOf(test, index).map((seen) => ({ id: randomUUID(), seen }));
  return { athleteId, test, variant: test === "push-up" ? "full" : "", attempts };
}

function seenOf(test: (typeof tests)[number], index: number): readonly object[] {
  switch (test) {
    case "push-up":
      return [{ how: "tally", reps: 17 + (index % 9), offAtEnd: 0 }];
    case "agility":
      return ["cw", "ccw"].map((direction) => ({ direction, laps: 6, extra: index % 4, touches: 0 }));
    case "vertical":
      return [{ standingReach: cm(210), touchReach: cm(249 + (index % 11) / 2) }];
    case "core":
      return [{ held: 80_000 + 3000 * (index % 30) }];
    case "endurance":
      return [{ finished: true, time: 365_000 + 100 * ((index * 37) % 160) }];
  }
}
