import { writeWhole } from "./through.ts";

/** Writes a small file of settings as JSON, whole or not at all; only this computer's user can read it. */
export function writeSettingsFile(file: string, settings: object): void {
  writeWhole(file, `${JSON.stringify(settings, null, 2)}\n`);
}
