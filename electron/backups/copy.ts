import { randomUUID } from "node:crypto";
import { rm, writeFile } from "node:fs/promises";
import { join } from "node:path";
import type { StoreLocation } from "../store/connection/connect.ts";
import type { ReadableDb } from "../store/connection/database.ts";
import type { BackupWork, CheckedFile } from "./work.ts";

/** A copy of a store that passed its checks. */
export interface CheckedCopy extends CheckedFile {
  readonly file: string;
}

/** Pages per step: some 400 KB, well under a frame's time. */
const pagesAStep = 100;

/** How a store is copied: where to, by which library, who checks the copy, and who hears how far it is. */
interface Copying {
  readonly folder: string;
  readonly library: Omit<StoreLocation, "file">;
  readonly check: BackupWork["check"];
  readonly told: (done: number, total: number) => void;
}

/**
 * Copies a store while it stays in use, by SQLite's own online backup, and lets the copy be opened, checked and used. It lies
 * in the folder until then.
 * @throws when there is no room, or the copy is damaged; and what `use` throws
 */
export async function copyStore(
  db: ReadableDb,
  { folder, library, check, told }: Copying,
  use: (copy: CheckedCopy) => Promise<void>,
): Promise<void> {
  const file = join(folder, `.copy-${randomUUID()}`);
  try {
    // SQLite accepts an empty file as it is, with its permissions.
    await writeFile(file, "", { mode: 0o600 });
    await db.backup(file, {
      progress: ({ totalPages, remainingPages }) => {
        told(totalPages - remainingPages, totalPages);
        return pagesAStep;
      },
    });
    await use({ file, ...(await check({ ...library, file })) });
  } finally {
    for (const part of ["", "-journal", "-wal", "-shm"]) await rm(`${file}${part}`, { force: true });
  }
}
