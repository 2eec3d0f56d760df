import { mkdir, readdir, rename, rm } from "node:fs/promises";
import { join } from "node:path";
import { superseded } from "../domain/backups/keep.ts";
import { type NamedBackup, namedBackup } from "../domain/backups/names.ts";
import type { BackupHeader } from "../domain/backups/records.ts";
import { syncFolder } from "../files/through.ts";
import { unfinishedBeside } from "../files/whole.ts";
import { readHeader } from "./file.ts";

/** Returns the backups in a folder, newest first; none if there is no such folder. */
export async function backupsIn(folder: string): Promise<NamedBackup[]> {
  const names = await readdir(folder).catch((error: NodeJS.ErrnoException) => {
    if (error.code === "ENOENT" || error.code === "ENOTDIR") return [];
    throw error;
  });
  return names
    .flatMap((name) => namedBackup(name) ?? [])
    .sort((a, b) => b.number - a.number || b.name.localeCompare(a.name));
}

/** A backup and its header; null if that can't be read. */
export type FoundBackup = NamedBackup & { readonly header: BackupHeader | null };

/** Returns the backups in a folder with their headers, newest first. */
export async function headersIn(folder: string): Promise<FoundBackup[]> {
  const found: FoundBackup[] = [];
  for (const named of await backupsIn(folder)) {
    const header = await readHeader(join(folder, named.name)).catch(() => null);
    found.push({ ...named, header });
  }
  return found;
}

/**
 * Lets a backup be written under another name, synced and read back, and only then renames it. Whatever fails, nothing half
 * done has a backup's name.
 */
export async function placeBackup(
  folder: string,
  name: string,
  write: (unfinished: string) => Promise<void>,
): Promise<void> {
  await mkdir(folder, { recursive: true, mode: 0o700 });
  const unfinished = unfinishedBeside(join(folder, name));
  try {
    await write(unfinished);
    await rename(unfinished, join(folder, name));
  } catch (error) {
    await rm(unfinished, { force: true }).catch(() => {});
    throw error;
  }
  syncFolder(folder);
}

/** Deletes this source's backups that the rule no longer keeps; other computers' backups are not ours to judge. */
export async function tidyBackups(folder: string, source: string, today: string): Promise<void> {
  const own = (await backupsIn(folder)).filter((backup) => backup.source === source);
  for (const { name } of superseded(own, today)) await rm(join(folder, name));
}

/**
 * Deletes this source's backups up to a number, and the remains of an interrupted one but for a copy that is in use. Returns
 * the number deleted.
 */
export async function forgetBackups(
  folder: string,
  source: string,
  upTo: number,
  inUse?: string,
): Promise<number> {
  const own = (await backupsIn(folder)).filter((backup) => backup.source === source && backup.number <= upTo);
  for (const { name } of own) await rm(join(folder, name));
  await dropUnfinished(folder, inUse);
  return own.length;
}

/** Deletes the remains of an interrupted backup: they are useless, and hold personal data. `inUse`: no remains, and stays. */
export async function dropUnfinished(folder: string, inUse?: string): Promise<void> {
  const names = await readdir(folder).catch(() => []);
  for (const name of names.filter((each) => /^\.(?:copy-[0-9a-f-]{36}|[0-9a-f-]{36}\.part)/.test(each))) {
    if (join(folder, name) !== inUse) await rm(join(folder, name), { force: true });
  }
}
