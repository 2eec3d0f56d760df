import { existsSync, readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { writeThrough, writeWholeText } from "../files/through.ts";
import type { LockKeep } from "../lock/kept.ts";

/** Files that the account's owner puts beside the stores to drop the PIN; Windows adds the ending. */
const forgettingFiles = ["forget-pin", "forget-pin.txt"];

/**
 * Keeps the lock in the data folder, beside the stores and not in one: it belongs to the computer, it applies in the
 * demo too, and a restored backup must not bring back an old PIN.
 */
export function lockFiles(folder: string): LockKeep {
  const file = join(folder, "lock.json");
  const log = join(folder, "lock-log.jsonl");
  return {
    folder,
    read: () => readOr(file, null),
    write: (text) => writeWholeText(file, text),
    note(line) {
      // Ends a line that a power cut left unfinished, so that it does not spoil this one.
      const before = readOr(log, "");
      const added = `${before === "" || before.endsWith("\n") ? "" : "\n"}${line}\n`;
      writeThrough(log, Buffer.from(added), "a");
    },
    notes: () =>
      readOr(log, "")
        .split("\n")
        .filter((line) => line !== ""),
    takeForgetting() {
      const asked = forgettingFiles.map((name) => join(folder, name)).filter((each) => existsSync(each));
      try {
        // First of all: a file that stays would open every later start too.
        for (const each of asked) rmSync(each, { recursive: true });
      } catch (error) {
        console.error("The PIN is not forgotten, because the file that asks for it can't be deleted:", error);
        return false;
      }
      return asked.length > 0;
    },
  };
}

/** Reads a whole file. Only a missing file counts as `other`; an unreadable one must not look the same. */
function readOr<Other>(file: string, other: Other): string | Other {
  try {
    return readFileSync(file, "utf8");
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "ENOENT") return other;
    throw error;
  }
}
