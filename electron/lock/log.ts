import { z } from "zod";
import { testCodes } from "../domain/tests/registry.ts";
import type { LockKeep } from "./kept.ts";

/** What becomes of the lock, for whoever wants to know later. No PIN stands in it, right or wrong. */
export const noteSchema = z.object({
  /** Wall time, ISO 8601. */
  at: z.string(),
  what: z.enum([
    "pin-set",
    "pin-changed",
    "pin-removed",
    "forgotten",
    "unreadable",
    "handed-over",
    "opened",
    "locked",
    "wrong",
  ]),
  /** Handed over: to whom, and of a station which. */
  to: z.enum(["check-in", "station"]).optional(),
  test: z.enum(testCodes).optional(),
  /** Locked: why. */
  why: z.enum(["hand", "idle", "sleep", "start"]).optional(),
  /** Wrong: the how-manieth in a row. */
  count: z.int().optional(),
});

export type LockNote = z.infer<typeof noteSchema>;

/** What is shown of the log. */
const newest = 20;

/** The newest notes, newest first; a line that can't be read is passed over, since the log decides nothing but this. */
export function newestNotes(keep: LockKeep, most: number = newest): LockNote[] {
  return keep.notes().flatMap(parseNote).slice(-most).reverse();
}

function parseNote(line: string): LockNote[] {
  try {
    const read = noteSchema.safeParse(JSON.parse(line));
    return read.success ? [read.data] : [];
  } catch {
    // Half a line is what a power cut leaves.
    return [];
  }
}

/** Whether a PIN should be there, by the log. */
export function pinIsExpected(keep: LockKeep): boolean {
  const last = newestNotes(keep, Number.MAX_SAFE_INTEGER).find(({ what }) => about.has(what));
  return last?.what === "pin-set" || last?.what === "pin-changed";
}

const about: ReadonlySet<LockNote["what"]> = new Set(["pin-set", "pin-changed", "pin-removed", "forgotten"]);
