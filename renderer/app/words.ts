import i18next from "i18next";
import { initReactI18next } from "react-i18next";

type Words = Record<string, unknown>;

const files = import.meta.glob<Words>("../../resources/locales/*/*.json", { eager: true, import: "default" });
const place = "language";

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
  (a, b) => Number(b === "en") - Number(a === "en") || a.localeCompare(b),
);

/** Changes the language of this window at once, and keeps it. */
export async function setLanguage(language: string): Promise<void> {
  localStorage.setItem(place, language);
  await i18next.changeLanguage(language);
}

/** Makes the words ready; before it, `t()` knows none. */
export async function setUpWords(): Promise<void> {
  const kept = localStorage.getItem(place);
  i18next.on("languageChanged", (language) => {
    document.documentElement.lang = language;
  });
  await i18next.use(initReactI18next).init({
    resources: words as Record<string, Record<string, Record<string, string>>>,
    lng: kept !== null && languages.includes(kept) ? kept : "en",
    fallbackLng: "en",
    defaultNS: "common",
    interpolation: { escapeValue: false },
  });
}
