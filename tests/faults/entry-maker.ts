import { randomUUID } from "node:crypto";
import type { KeptEntry, MendedAttempt } from "../../renderer/app/kept-entries.ts";
import { chanceOf, correctionOf, newEntry, oneOf, order, type Sent } from "./orders.ts";

/** A result that stands, as the device that entered it knows it. */
interface Standing {
  readonly device: number;
  readonly bib: number;
  readonly sent: Sent;
  readonly attempt: Sent["attempts"][number];
  /** What it corrects itself. */
  readonly replaces?: MendedAttempt["replaces"];
}

interface MakerParts {
  readonly seed: number;
  /** The test of each device. */
  readonly tests: readonly string[];
  /** Of 100 entries, how many correct or take back an earlier one of the same test. */
  readonly mends: number;
  /** Says whether the table was ever heard to have what a device entered under this id. */
  isThere(device: number, itemId: string): Promise<boolean>;
}

/** Makes invented entries for devices, each athlete's first, and corrections of what stands. */
export function createEntryMaker({ seed, tests, mends, isThere }: MakerParts) {
  const chance = chanceOf(seed);
  const standing = new Map<string, Standing>();
  let athletes = 0;

  function firstOf(device: number, test: string): KeptEntry {
    athletes += 1;
    const step = order.findIndex((each) => each.test === test);
    const sent = newEntry(chance, athletes, step);
    const item = { what: "enter", id: randomUUID(), bib: athletes, entry: sent as never } as const;
    for (const attempt of sent.attempts) standing.set(item.id, { device, bib: athletes, sent, attempt });
    return item;
  }
  /** Nobody corrects what their screen does not show: the table had it once. */
  async function standingOne(test: string): Promise<[string, Standing] | undefined> {
    const own = [...standing].filter(([, { sent }]) => sent.test === test);
    const found = oneOf(chance, own);
    return found !== undefined && (await isThere(found[1].device, found[0])) ? found : undefined;
  }
  function mend([id, { bib, sent, attempt, replaces }]: [string, Standing], device: number): KeptEntry {
    standing.delete(id);
    const own = { athleteId: sent.athleteId, variant: sent.variant, seen: attempt.seen, by: sent.by };
    const mended = replaces === undefined ? own : { ...own, replaces };
    if (chance() < 0.3) {
      const input = { attemptId: attempt.id, reason: "Somebody else's", by: "QA" };
      return { what: "void", id: randomUUID(), test: sent.test as never, input: input as never, mended };
    }
    const entry = correctionOf(chance, sent, attempt);
    const item = { what: "enter", id: randomUUID(), bib, entry: entry as never, mended } as const;
    const about = { device, bib, sent: entry, replaces: { attemptId: attempt.id, mended } };
    for (const each of entry.attempts) standing.set(item.id, { ...about, attempt: each });
    return item;
  }
  return {
    async next(device: number): Promise<KeptEntry> {
      const test = tests[device] ?? "core";
      const found = chance() * 100 < mends ? await standingOne(test) : undefined;
      return found === undefined ? firstOf(device, test) : mend(found, device);
    },
  };
}
