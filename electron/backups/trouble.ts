import { type Sentence, sentence } from "../domain/words.ts";
import { StoreRefused } from "../store/connection/refused.ts";
import { BackupUnusable } from "./file.ts";

const full = ["ENOSPC", "EDQUOT", "EFBIG", "SQLITE_FULL"];
const closed = [
  "EACCES",
  "EPERM",
  "EROFS",
  "SQLITE_READONLY",
  "SQLITE_READONLY_DIRECTORY",
  "SQLITE_CANTOPEN",
];

/** True if something failed because the disk is full. */
export function isForRoom(error: unknown): boolean {
  return full.includes(String((error as { code?: unknown } | null)?.code ?? ""));
}

/** Returns why a backup could not be made, and what to do. Entry goes on meanwhile. */
export function whyNotMade(error: unknown): Sentence {
  const { code = "", message = String(error) } = (error ?? {}) as { code?: string; message?: string };
  if (isForRoom(error)) return sentence("backups.full");
  if (closed.includes(code)) return sentence("backups.readOnly");
  return sentence("backups.failed", { message });
}

/** Returns why a backup can't be restored, and what to do. */
export function whyNotUsed(error: unknown): Sentence {
  if (error instanceof BackupUnusable) {
    if (error.why === "locked") return sentence("backups.locked");
    if (error.why === "wrong-passphrase") return sentence("backups.wrongPassphrase");
    return sentence("backups.unreadable");
  }
  if (error instanceof StoreRefused && error.reason === "newer") return error.sentence;
  if (error instanceof StoreRefused) return sentence("backups.unreadable");
  return whyNotMade(error);
}
