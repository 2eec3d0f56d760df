import type { Language } from "../../electron/domain/languages.ts";
import english from "../locales/en/shell.json" with { type: "json" };
import spanish from "../locales/es/shell.json" with { type: "json" };

/** What a system shows of the program before it is opened, in each language. */
export const installWords: Readonly<Record<Language, typeof english.install>> = {
  en: english.install,
  es: spanish.install,
};

/** Who is written to about a package. There is nobody yet: a name that leads nowhere (RFC 2606). */
export const maintainer = "the Tapeline authors <authors@tapeline.invalid>";

/** Where more is said about the program. Nowhere yet: a name that leads nowhere (RFC 2606). */
export const homepage = "https://tapeline.invalid";

/** The categories of the freedesktop.org menu: a main one, then what the program is about. */
export const menuCategories = ["Education", "Sports"] as const;

/** What the menu's entry says in every language, by the keys of the Desktop Entry Specification. */
export function menuWords(): Record<string, string> {
  const { en, ...others } = installWords;
  const entries = Object.entries(others).flatMap(([language, words]) => [
    [`GenericName[${language}]`, words.generic],
    [`Comment[${language}]`, words.comment],
    [`Keywords[${language}]`, words.keywords],
  ]);
  const own = { GenericName: en.generic, Comment: en.comment, Keywords: en.keywords };
  return { ...own, ...Object.fromEntries(entries) };
}
