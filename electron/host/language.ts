import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { KeptLanguage } from "../api/make-desk.ts";
import { type Language, languageChoiceSchema } from "../domain/languages.ts";
import { writeSettingsFile } from "../store/connection/settings-file.ts";

/** Keeps this computer's language in the data folder; until one is chosen, it is the system's own. */
export function keptLanguage(folder: string, systemLanguage: () => Language): KeptLanguage {
  const file = join(folder, "language.json");
  let chosen = readLanguage(file);
  return {
    now: () => chosen ?? systemLanguage(),
    choose(language) {
      writeSettingsFile(file, { language });
      chosen = language;
    },
  };
}

/**
 * Reads the language chosen on this computer; null if there is no choice or an unknown one. The file is beside the
 * store, not in it, since the report on a store that can't be opened needs it too.
 */
function readLanguage(file: string): Language | null {
  try {
    return languageChoiceSchema.parse(JSON.parse(readFileSync(file, "utf8"))).language;
  } catch {
    // Nothing is lost: the language can be chosen again.
    return null;
  }
}
