import { z } from "zod";
import { testCodes } from "../domain/tests/registry.ts";
import type { LockKeep } from "./kept.ts";

/** An event of the lock, for later reading. It never holds a PIN, right or wrong. */
const noteSchema = z.object({
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
  /** Handed over: the new user and, for a station, its test. */
  to: z.enum(["check-in", "station"]).optional(),
  test: z.enum(testCodes).optional(),
  /** Locked: the reason. */
  why: z.enum(["hand", "idle", "sleep", "start"]).optional(),
  /** Wrong: number of wrong tries in a row. */
  count: z.int().optional(),
});

export type LockNote = z.infer<typeof noteSchema>;

/** Number of notes shown. */
const newest = 20;

/** Returns the newest notes, newest first. Unreadable lines are skipped, since the log decides nothing else. */
export function newestNotes(keep: LockKeep, most: number = newest): LockNote[] {
  return keep.notes().flatMap(parseNote).slice(-most).reverse();
}

function parseNote(line: string): LockNote[] {
  try {
    const read = noteSchema.safeParse(JSON.parse(line));
    return read.success ? [read.data] : [];
  } catch {
    // A power cut leaves half a line.
    return [];
  }
}

/** True if a PIN should exist, by the log. */
export function pinIsExpected(keep: LockKeep): boolean {
  const last = newestNotes(keep, Number.MAX_SAFE_INTEGER).find(({ what }) => about.has(what));
  return last?.what === "pin-set" || last?.what === "pin-changed";
}

const about: ReadonlySet<LockNote["what"]> = new Set(["pin-set", "pin-changed", "pin-removed", "forgotten"]);
