import { randomUUID } from "node:crypto";
import { cm } from "../lengths.ts";

/** What the process that enters is told on its command line, as JSON. */
export interface Orders {
  readonly folder: string;
  readonly seed: number;
  readonly clients: number;
  /** Entries after which it closes as a user would; null: goes on until it is ended. */
  readonly entries: number | null;
  /** At the end of its entries it stays open and rests, until it is ended. */
  readonly rests: boolean;
  /** At the first entry that finds no room it fills what is left, to the last byte, and backs up. */
  readonly fills: boolean;
  /** Takes the log into the file after every entry, so that most of its life is spent in checkpoints. */
  readonly checkpoints: boolean;
  readonly synchronous: "FULL" | "NORMAL";
  /** A file with one entry a line that were sent before: those without an answer are sent again first. */
  readonly before: string;
  /** How many athletes a new store is given. */
  readonly athletes: number;
}

/** One request to `station.enter`, as a page would send it. */
export interface Sent {
  readonly athleteId: number;
  readonly test: string;
  readonly variant: string;
  readonly attempts: readonly { readonly id: string; readonly seen: unknown }[];
  readonly by: string;
  readonly note: string;
  readonly sure: true;
  readonly replaces?: { readonly attemptId: string; readonly reason: string };
}

/** What it says, a line each: sent, answered (saved), refused (with the sentence's key), resting, closed. */
export type Said =
  | { readonly sent: Sent }
  | { readonly saved: string }
  | { readonly refused: string; readonly key: string }
  | { readonly rests: true }
  | { readonly closed: true };

export interface SentBefore {
  readonly sent: Sent;
  readonly saved: boolean;
}

type Chance = () => number;

/** Chance that repeats: Park & Miller 1988, as the door's tests have it. */
export function chanceOf(seed: number): Chance {
  let state = (seed % 2_147_483_646) + 1;
  return () => {
    state = (state * 16_807) % 2_147_483_647;
    return (state - 1) / 2_147_483_646;
  };
}

export function oneOf<Item>(chance: Chance, items: readonly Item[]): Item | undefined {
  return items[Math.floor(chance() * items.length)];
}

const upTo = (chance: Chance, from: number, to: number) => from + Math.floor(chance() * (to - from + 1));

/** The tests in the order that a day holds, each with what may have been seen. */
export const order: readonly { test: string; variant: string; seen: (chance: Chance) => unknown[] }[] = [
  { test: "push-up", variant: "full", seen: (c) => [{ how: "tally", reps: upTo(c, 5, 40), offAtEnd: 0 }] },
  {
    test: "agility",
    variant: "",
    seen: (c) =>
      ["cw", "ccw"].map((direction) => ({
        direction,
        laps: upTo(c, 3, 8),
        extra: upTo(c, 0, 3),
        touches: 0,
      })),
  },
  {
    test: "vertical",
    variant: "",
    seen: (c) => [{ standingReach: cm(210), touchReach: cm(upTo(c, 225, 260)) }],
  },
  { test: "core", variant: "", seen: (c) => [{ held: upTo(c, 20, 230) * 1000 }] },
];

export function newEntry(chance: Chance, athleteId: number, step: number): Sent {
  const { test, variant, seen } = order[step] ?? { test: "core", variant: "", seen: () => [] };
  const attempts = seen(chance).map((each) => ({ id: randomUUID(), seen: each }));
  return { athleteId, test, variant, attempts, by: "QA", note: "", sure: true };
}

/** The direction of a quadrant jump; nothing of other tests. */
function wayOf(seen: unknown): unknown {
  return (seen as { readonly direction?: string }).direction;
}

/** The same again with something else seen, in place of one attempt that was saved. */
export function correctionOf(chance: Chance, saved: Sent, attempt: Sent["attempts"][number]): Sent {
  const step = order.findIndex(({ test }) => test === saved.test);
  const fresh = newEntry(chance, saved.athleteId, step);
  const again = fresh.attempts.filter(({ seen }) => wayOf(seen) === wayOf(attempt.seen)).slice(0, 1);
  return { ...fresh, attempts: again, replaces: { attemptId: attempt.id, reason: "A slip" } };
}
