import { join } from "node:path";
import type { KeptLanguage } from "../api/make-desk.ts";
import type { Language } from "../domain/languages.ts";
import { readLanguage, writeLanguage } from "./language-file.ts";

/** Keeps this computer's language in the data folder; until one is chosen, it is the system's own. */
export function keptLanguage(folder: string, systemLanguage: () => Language): KeptLanguage {
  const file = join(folder, "language.json");
  let chosen = readLanguage(file);
  return {
    now: () => chosen ?? systemLanguage(),
    choose(language) {
      writeLanguage(file, language);
      chosen = language;
    },
  };
}
