import i18next from "i18next";
import english from "../../../resources/locales/en/sentences.json" with { type: "json" };
import spanish from "../../../resources/locales/es/sentences.json" with { type: "json" };
import { type Language, type Words, withPlurals } from "../../domain/languages.ts";
import type { Sentence } from "../../domain/words.ts";

const sentences: Readonly<Record<Language, Words>> = { en: english, es: spanish };

const words = i18next.createInstance();
void words.init({
  lng: "en",
  fallbackLng: "en",
  ns: ["sentences"],
  defaultNS: "sentences",
  resources: Object.fromEntries(
    Object.entries(sentences).map(([language, texts]) => [
      language,
      { sentences: withPlurals(texts, language) as Record<string, string> },
    ]),
  ),
  initAsync: false,
  interpolation: { escapeValue: false },
});

/**
 * Translates a sentence (into English by default) for sheets, stored reasons and messages. Windows do it themselves.
 */
export function say(sentence: Sentence, language: Language = "en"): string {
  return words.t(sentence.key, { ...sentence.values, lng: language });
}
