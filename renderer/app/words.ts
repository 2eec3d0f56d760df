import i18next from "i18next";
import { initReactI18next } from "react-i18next";

type Words = Record<string, unknown>;

const files = import.meta.glob<Words>("../../resources/locales/*/*.json", { eager: true, import: "default" });

/** The word files as i18next wants them: language → namespace (the file's name) → keys. */
function gatherWords(): Record<string, Record<string, Words>> {
  const words: Record<string, Record<string, Words>> = {};
  for (const [path, keys] of Object.entries(files)) {
    const [, language, namespace] = /\/([^/]+)\/([^/]+)\.json$/.exec(path) ?? [];
    if (language === undefined || namespace === undefined) continue;
    words[language] ??= {};
    words[language][namespace] = keys;
  }
  return words;
}

const words = gatherWords();

/** The languages that have a folder of words, English first. */
export const languages: readonly string[] = Object.keys(words).sort(
  (a, b) => Number(b === "en") - Number(a === "en"),
);

await i18next.use(initReactI18next).init({
  resources: words as Record<string, Record<string, Record<string, string>>>,
  lng: "en",
  fallbackLng: "en",
  defaultNS: "common",
  interpolation: { escapeValue: false },
});
