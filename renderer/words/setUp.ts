import i18next from "i18next";
import { initReactI18next } from "react-i18next";
import { type Words, withPlurals } from "../../electron/domain/languages.ts";
import { inSentences } from "./numbers.ts";

const files = import.meta.glob<Words>("../../resources/locales/*/*.json", { eager: true, import: "default" });

type Texts = Record<string, string>;

/** Gathers the word files for i18next: language → namespace (the file's name) → keys. */
function gatherWords(): Record<string, Record<string, Texts>> {
  const words: Record<string, Record<string, Texts>> = {};
  for (const [path, keys] of Object.entries(files)) {
    const [, language, namespace] = /\/([^/]+)\/([^/]+)\.json$/.exec(path) ?? [];
    if (language === undefined || namespace === undefined) continue;
    words[language] ??= {};
    words[language][namespace] = withPlurals(keys, language) as Texts;
  }
  return words;
}

/** Loads the words in the first language; before that, `t()` knows none. */
export async function setUpWords(language: string): Promise<void> {
  i18next.on("languageChanged", (now) => {
    document.documentElement.lang = now;
  });
  await i18next
    .use(initReactI18next)
    .use(inSentences)
    .init({
      resources: gatherWords(),
      lng: language,
      fallbackLng: "en",
      defaultNS: "common",
      interpolation: { escapeValue: false, alwaysFormat: true },
    });
}
