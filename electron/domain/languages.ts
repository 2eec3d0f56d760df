import { z } from "zod";

/** The languages that there are words for, English first: each has a folder in `resources/locales`. */
export const languages = ["en", "es"] as const;
export type Language = (typeof languages)[number];

/** The choice of one, as it is sent and as it is kept. */
export const languageChoiceSchema = z.strictObject({ language: z.enum(languages) });

const locales: Readonly<Record<Language, string>> = { en: "en-GB", es: "es" };

function isLanguage(text: string): text is Language {
  return (languages as readonly string[]).includes(text);
}

/** The locale (BCP 47) that dates and times of a language are written by. */
export function localeOf(language: string): string {
  return isLanguage(language) ? locales[language] : language;
}

/** The first of somebody's preferred languages (BCP 47 tags, most wanted first) that there are words for. */
export function languageFor(preferred: readonly string[]): Language {
  const wanted = preferred.map((tag) => tag.toLowerCase().split(/[-_]/)[0] ?? "");
  return wanted.find(isLanguage) ?? "en";
}

/** Words of one file: texts, or groups of them. */
export interface Words {
  readonly [key: string]: string | Words;
}

/**
 * The words with every plural form that the language has (CLDR): one that is not written is said as `_other`. Spanish
 * has `_many` for whole millions, which only bytes ever reach here.
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
