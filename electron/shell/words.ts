import i18next from "i18next";
import english from "../../resources/locales/en/shell.json" with { type: "json" };
import spanish from "../../resources/locales/es/shell.json" with { type: "json" };
import { type Language, languages, type Words, withPlurals } from "../domain/languages.ts";
import type { Sentence } from "../domain/words.ts";

const texts: Readonly<Record<Language, Words>> = { en: english, es: spanish };

const words = i18next.createInstance();
void words.init({
  lng: "en",
  fallbackLng: "en",
  ns: ["shell"],
  defaultNS: "shell",
  resources: Object.fromEntries(
    languages.map((language) => [
      language,
      { shell: withPlurals(texts[language], language) as Record<string, string> },
    ]),
  ),
  initAsync: false,
  // The page that shows the text escapes it.
  interpolation: { escapeValue: false },
});

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
  return words.t(key, { ...values, lng: languageNow() });
}
