import { readFileSync } from "node:fs";
import { type Language, languageChoiceSchema } from "../domain/languages.ts";
import { writeSettingsFile } from "../store/connection/settings-file.ts";

/**
 * The language that was chosen on this computer; null where nobody chose, or the file says nothing that is known. It
 * stands beside the store and not in it, since a store that can't be opened has to be told of too.
 */
export function readLanguage(file: string): Language | null {
  try {
    return languageChoiceSchema.parse(JSON.parse(readFileSync(file, "utf8"))).language;
  } catch {
    // Nothing is lost with it: the language is chosen again.
    return null;
  }
}

/** Keeps the choice, whole or not at all. */
export function writeLanguage(file: string, language: Language): void {
  writeSettingsFile(file, { language });
}
