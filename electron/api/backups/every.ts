import type { Desk } from "../door/desk.ts";

/** Ms between checks whether a backup is due; also how soon a newly plugged-in stick is seen. */
const askEveryMs = 15_000;
/** Longest wait for a backup on closing, in ms; a slow stick gets its backup at the next start. */
const closingLimitMs = 8_000;

/** Backs the desk up whenever a backup is due, until the returned function is called. */
export function keepBackedUp({ backups }: Desk): () => void {
  void backups?.look();
  const timer = setInterval(() => void backups?.runWhenDue(), askEveryMs);
  return () => clearInterval(timer);
}

/** Makes the last backup, then closes the desk, whether it succeeded or not. */
export async function closeWithBackup(desk: Desk): Promise<void> {
  try {
    // Entries from before the demo are in the hall's own store.
    desk.use("own");
    await Promise.race([
      desk.backups?.runWhatLacks(),
      new Promise((resolve) => setTimeout(resolve, closingLimitMs)),
    ]);
  } finally {
    desk.close();
  }
}
