import { z } from "zod/mini";

/** The languages with texts, English first: each has a folder in `resources/locales`. */
export const languages = ["en", "es"] as const;
export type Language = (typeof languages)[number];

/** A chosen language, as it is sent and stored. */
export const languageChoiceSchema = z.strictObject({ language: z.enum(languages) });

const locales: Readonly<Record<Language, string>> = { en: "en-GB", es: "es" };

function isLanguage(text: string): text is Language {
  return (languages as readonly string[]).includes(text);
}

/** Returns the locale (BCP 47) for writing a language's dates and times. */
export function localeOf(language: string): string {
  return isLanguage(language) ? locales[language] : language;
}

/** Returns the first of a person's preferred languages (BCP 47 tags, most wanted first) that has texts; null if none has. */
export function languageAmong(preferred: readonly string[]): Language | null {
  const wanted = preferred.map((tag) => tag.toLowerCase().split(/[-_]/)[0] ?? "");
  return wanted.find(isLanguage) ?? null;
}

/** The same, and English where none has. */
export function languageFor(preferred: readonly string[]): Language {
  return languageAmong(preferred) ?? "en";
}

/** The texts of one file, nested in groups. */
export interface Words {
  readonly [key: string]: string | Words;
}

/**
 * Fills in every plural form that the language has (CLDR): a missing one gets the text of `_other`. Spanish has `_many`
 * for whole millions, which only bytes ever reach here.
 */
export function withPlurals(words: Words, language: string): Words {
  const forms = new Intl.PluralRules(language).resolvedOptions().pluralCategories;
  const whole: Record<string, string | Words> = {};
  for (const [key, text] of Object.entries(words)) {
    whole[key] = typeof text === "string" ? text : withPlurals(text, language);
    const counted = /^(.+)_other$/.exec(key)?.[1];
    if (counted === undefined) continue;
    for (const form of forms) {
      const written = words[`${counted}_${form}`];
      whole[`${counted}_${form}`] = written ?? text;
    }
  }
  return whole;
}
