import { readdirSync } from "node:fs";
import { namedBackup } from "../../domain/backups/names.ts";

/** True if a folder holds a backup; false if there is no such folder. */
export function anyBackupIn(folder: string): boolean {
  try {
    return readdirSync(folder).some((name) => namedBackup(name) !== null);
  } catch (error) {
    if (["ENOENT", "ENOTDIR"].includes((error as NodeJS.ErrnoException).code ?? "")) return false;
    throw error;
  }
}
