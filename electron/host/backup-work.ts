import { join } from "node:path";
import type { BackupWork } from "../backups/work.ts";
import type { BackupTask, FromBackupThread } from "./backup-thread.ts";
import { inThread } from "./thread.ts";

/** The thread's own code where the program runs from its sources. */
const ownThread = join(import.meta.dirname, "backup-thread.ts");

/**
 * Checks and packs backups in a thread of its own for each.
 * @param threadFile the file of `backup-thread`, where it is not beside this one
 */
export function backupsApart(threadFile = ownThread): BackupWork {
  const run = (task: BackupTask) => inThread(threadFile, task, (word: FromBackupThread) => word);
  return {
    async check(copy) {
      const word = await run({ check: copy });
      if (!("checked" in word)) throw new Error("the copy was not checked");
      return word.checked;
    },
    async pack(target, pack) {
      await run({ target, pack });
    },
  };
}
