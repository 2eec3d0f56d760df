import { readdirSync } from "node:fs";
import { namedBackup } from "../../domain/backups/names.ts";

/** Whether a folder holds a backup; false where there is no such folder. */
export function anyBackupIn(folder: string): boolean {
  try {
    return readdirSync(folder).some((name) => namedBackup(name) !== null);
  } catch (error) {
    if (["ENOENT", "ENOTDIR"].includes((error as NodeJS.ErrnoException).code ?? "")) return false;
    throw error;
  }
}
