import i18next from "i18next";
import english from "../../../resources/locales/en/sentences.json" with { type: "json" };
import spanish from "../../../resources/locales/es/sentences.json" with { type: "json" };
import { type Language, type Words, withPlurals } from "../../domain/languages.ts";
import type { Sentence } from "../../domain/words.ts";

/** Returns what translates the sentences of one file, whose keys every language has. Who shows a text escapes it. */
export function translator(files: Readonly<Record<Language, Words>>) {
  const words = i18next.createInstance();
  void words.init({
    lng: "en",
    fallbackLng: "en",
    ns: ["file"],
    defaultNS: "file",
    resources: Object.fromEntries(
      Object.entries(files).map(([language, texts]) => [
        language,
        { file: withPlurals(texts, language) as Record<string, string> },
      ]),
    ),
    initAsync: false,
    interpolation: { escapeValue: false },
  });
  return (key: string, values: Sentence["values"], language: Language): string =>
    words.t(key, { ...values, lng: language });
}

const translate = translator({ en: english, es: spanish });

/**
 * Translates a sentence (into English by default) for sheets, stored reasons and messages. Windows do it themselves.
 */
export function say(sentence: Sentence, language: Language = "en"): string {
  return translate(sentence.key, sentence.values, language);
}
