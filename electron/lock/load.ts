import { freshLock, type KeptLock, keptLockSchema, type LockKeep } from "./kept.ts";
import { type LockNote, pinIsExpected } from "./log.ts";

interface Loaded {
  readonly kept: KeptLock;
  /** True if there should be a lock and it can't be read: the desk stays shut. */
  readonly unreadable: boolean;
}

/**
 * Reads the stored lock. It stays shut if it can't be read, or if it is gone or without a PIN although the log says
 * that one was set and never removed. The only way round a PIN is the deliberate request, which is logged.
 */
export function loadLock(keep: LockKeep, note: (what: LockNote["what"]) => void): Loaded {
  if (keep.takeForgetting()) return { kept: forget(keep, note), unreadable: false };
  try {
    const text = keep.read();
    if (text === null && !pinIsExpected(keep)) return { kept: freshLock, unreadable: false };
    const kept = keptLockSchema.parse(JSON.parse(text ?? ""));
    if (kept.pin === null && !kept.removed && pinIsExpected(keep))
      throw new Error("the PIN is missing in it");
    return { kept, unreadable: false };
  } catch (error) {
    console.error("What is kept of the desk's lock can't be read:", error);
    note("unreadable");
    return { kept: freshLock, unreadable: true };
  }
}

/** Removes the PIN with all settings: the next user has to choose again. */
function forget(keep: LockKeep, note: (what: LockNote["what"]) => void): KeptLock {
  console.warn("The desk's PIN is taken away, as a file in the data folder asks.");
  note("forgotten");
  const kept = { ...freshLock, removed: true };
  try {
    keep.write(JSON.stringify(kept, null, 2));
  } catch (error) {
    console.error("The lock could not be kept; this start has no PIN, the next one has it again:", error);
  }
  return kept;
}
