import { writeWholeText } from "../../files/through.ts";

/** Writes a small settings file as JSON, whole or not at all; only this computer's user can read it. */
export function writeSettingsFile(file: string, settings: object): void {
  writeWholeText(file, `${JSON.stringify(settings, null, 2)}\n`);
}
