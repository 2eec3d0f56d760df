import { readFileSync } from "node:fs";
import { type Language, languageChoiceSchema } from "../domain/languages.ts";
import { writeSettingsFile } from "../store/connection/settings-file.ts";

/**
 * Reads the language chosen on this computer; null if there is no choice or an unknown one. The file is beside the
 * store, not in it, since the report on a store that can't be opened needs it too.
 */
export function readLanguage(file: string): Language | null {
  try {
    return languageChoiceSchema.parse(JSON.parse(readFileSync(file, "utf8"))).language;
  } catch {
    // Nothing is lost: the language can be chosen again.
    return null;
  }
}

/** Stores the choice, whole or not at all. */
export function writeLanguage(file: string, language: Language): void {
  writeSettingsFile(file, { language });
}
