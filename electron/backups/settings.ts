import { randomBytes } from "node:crypto";
import { existsSync, readFileSync } from "node:fs";
import { type BackupSettings, settingsSchema } from "../domain/backups/records.ts";
import { writeSettingsFile } from "../store/connection/settings-file.ts";
import type { Lock } from "./cipher.ts";

/** Returns the backup settings, or new ones if there are none (or the file can't be read). */
export function readSettings(file: string): BackupSettings {
  const source = randomBytes(4).toString("hex");
  return keptSettings(file) ?? { source, second: null, lock: null, forgetUpTo: 0, forgetting: null };
}

/** Returns the stored backup settings; null if there are none, or the file can't be read. */
export function keptSettings(file: string): BackupSettings | null {
  if (!existsSync(file)) return null;
  const parsed = settingsSchema.safeParse(parsedJson(readFileSync(file, "utf8")));
  return parsed.success ? parsed.data : null;
}

/** Stores the settings, whole or not at all. Only this computer's user can read them: they hold the lock's key. */
export function writeSettings(file: string, settings: BackupSettings): void {
  writeSettingsFile(file, settings);
}

export function lockOf({ lock }: BackupSettings): Lock | null {
  return lock === null ? null : { scrypt: lock.scrypt, key: Buffer.from(lock.key, "base64") };
}

export function withLock(settings: BackupSettings, lock: Lock | null): BackupSettings {
  const kept = lock === null ? null : { scrypt: lock.scrypt, key: lock.key.toString("base64") };
  return { ...settings, lock: kept };
}

/** Parses a text as JSON; undefined for one that is none. */
export function parsedJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
