import { closeSync, fsyncSync, openSync, renameSync, writeSync } from "node:fs";
import { dirname } from "node:path";
import { syncFolder } from "./set-aside.ts";

/** Writes a small file of settings as JSON, whole or not at all; only this computer's user can read it. */
export function writeSettingsFile(file: string, settings: object): void {
  const unfinished = `${file}.part`;
  const opened = openSync(unfinished, "w", 0o600);
  try {
    writeSync(opened, `${JSON.stringify(settings, null, 2)}\n`);
    fsyncSync(opened);
  } finally {
    closeSync(opened);
  }
  renameSync(unfinished, file);
  syncFolder(dirname(file));
}
