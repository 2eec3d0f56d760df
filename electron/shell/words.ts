import english from "../../resources/locales/en/shell.json" with { type: "json" };
import spanish from "../../resources/locales/es/shell.json" with { type: "json" };
import { translator } from "../api/door/words.ts";
import type { Language } from "../domain/languages.ts";
import type { Sentence } from "../domain/words.ts";

const translate = translator({ en: english, es: spanish });

let languageNow: () => Language = () => "en";

/** Sets the source of the shell's language; asked again for each text, so that a change takes effect at once. */
export function speakIn(language: () => Language): void {
  languageNow = language;
}

/** Returns the shell's current language. */
export function shellLanguage(): Language {
  return languageNow();
}

/** Returns one of the shell's own texts, from `shell.json`. */
export function shellText(key: string, values?: Sentence["values"]): string {
  return translate(key, values, languageNow());
}
