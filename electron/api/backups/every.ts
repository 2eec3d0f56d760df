import type { Desk } from "../door/desk.ts";

/** How often it is asked whether a backup is due; also how soon a stick that was plugged in is seen. */
const askEveryMs = 15_000;
/** The longest that closing waits for a backup; a slow stick gets its backup at the next start. */
const closingLimitMs = 8_000;

/** Backs the desk up whenever that is due, until the returned function is called. */
export function keepBackedUp({ backups }: Desk): () => void {
  void backups?.look();
  const timer = setInterval(() => void backups?.runWhenDue(), askEveryMs);
  return () => clearInterval(timer);
}

/** Makes the last backup, then closes the desk, whatever came of it. */
export async function closeWithBackup(desk: Desk): Promise<void> {
  try {
    // Entries of before the demonstration are in the hall's own store.
    desk.use("own");
    await Promise.race([
      desk.backups?.runWhatLacks(),
      new Promise((resolve) => setTimeout(resolve, closingLimitMs)),
    ]);
  } finally {
    desk.close();
  }
}
