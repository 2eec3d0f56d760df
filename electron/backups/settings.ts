import { randomBytes } from "node:crypto";
import { existsSync, readFileSync } from "node:fs";
import { type BackupSettings, settingsSchema } from "../domain/backups/records.ts";
import { writeSettingsFile } from "../store/connection/settings-file.ts";
import type { Lock } from "./cipher.ts";

/** What was decided about backups, or a beginning where nothing was (or where the file can't be read). */
export function readSettings(file: string): BackupSettings {
  const source = randomBytes(4).toString("hex");
  return keptSettings(file) ?? { source, second: null, lock: null, forgetUpTo: 0 };
}

/** What was decided about backups; null where nothing was, or where the file can't be read. */
export function keptSettings(file: string): BackupSettings | null {
  if (!existsSync(file)) return null;
  const parsed = settingsSchema.safeParse(parsedJson(readFileSync(file, "utf8")));
  return parsed.success ? parsed.data : null;
}

/** Keeps what was decided, whole or not at all. Only this computer's user can read it: it holds the key of the lock. */
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

function parsedJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
