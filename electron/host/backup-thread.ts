/** The thread in which a backup is checked, packed and read back, behind the entries. */
import { parentPort, workerData } from "node:worker_threads";
import type { ToPack } from "../backups/file.ts";
import { type CheckedFile, workHere } from "../backups/work.ts";
import type { StoreLocation } from "../store/connection/connect.ts";
import { goBehindEntries } from "./behind-entries.ts";
import { type ErrorWith, errorWith } from "./thread.ts";

export type BackupTask =
  | { readonly check: StoreLocation }
  | { readonly pack: ToPack; readonly target: string };

export type FromBackupThread =
  | { readonly checked: CheckedFile }
  | { readonly packed: true }
  | { readonly failed: ErrorWith };

goBehindEntries();
const task = workerData as BackupTask;
try {
  if ("check" in task) say({ checked: await workHere.check(task.check) });
  else {
    await workHere.pack(task.target, task.pack);
    say({ packed: true });
  }
} catch (error) {
  say({ failed: errorWith(error) });
}

function say(word: FromBackupThread): void {
  parentPort?.postMessage(word);
}
