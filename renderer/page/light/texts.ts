import type { Words } from "../../../electron/domain/languages.ts";
import { createCell } from "../../app/cell.ts";
import { inSentences } from "../../words/numbers.ts";

/*
 * Takes the place of i18next and of its binding to components in the page for everybody, which may weigh 300 kB with
 * all that it brings: the part of them that the page's words need (`tests/unit/page/texts.test.ts` holds one against the other).
 */

/** Language → namespace → words. */
type Resources = Readonly<Record<string, Readonly<Record<string, Words>>>>;
type Values = Readonly<Record<string, unknown>>;
type Translate = (key: string | readonly string[], values?: Values) => string;

const language = createCell("en");
let resources: Resources = {};

/** Takes the words, and speaks a language. */
export function begin(words: Resources, first: string): void {
  resources = words;
  language.set(first);
}

function lookedUp(namespaces: readonly string[], key: string, now: string): string | undefined {
  const [own, rest] = key.includes(":") ? (key.split(":", 2) as [string, string]) : [null, key];
  for (const spoken of [now, "en"]) {
    for (const namespace of own === null ? namespaces : [own]) {
      let found: string | Words | undefined = resources[spoken]?.[namespace];
      for (const part of rest.split(".")) found = typeof found === "object" ? found[part] : undefined;
      if (typeof found === "string") return found;
    }
  }
  return undefined;
}

function formsOf(key: string, values: Values, now: string): string[] {
  const { count } = values;
  if (typeof count !== "number") return [key];
  return [`${key}_${new Intl.PluralRules(now).select(count)}`, key];
}

/** Puts values in the place of `{{name}}`, written as the language writes numbers. */
function filled(text: string, values: Values, now: string): string {
  return text.replaceAll(/\{\{\s*(\w+)\s*\}\}/g, (_all, name: string) => {
    const value = values[name];
    if (value === undefined) return "";
    return String(inSentences.format(value, undefined, now, { interpolationkey: name }));
  });
}

function translator(namespaces: readonly string[], now: string): Translate {
  return (key, values = {}) => {
    const keys = typeof key === "string" ? [key] : key;
    for (const each of keys) {
      for (const form of formsOf(each, values, now)) {
        const text = lookedUp(namespaces, form, now);
        if (text !== undefined) return filled(text, values, now);
      }
    }
    const { defaultValue } = values;
    return typeof defaultValue === "string" ? defaultValue : (keys.at(-1) ?? "");
  };
}

const listed = (namespace: string | readonly string[] | undefined) =>
  namespace === undefined ? ["common"] : typeof namespace === "string" ? [namespace] : namespace;

const spoken = {
  get language() {
    return language.get();
  },
  t: ((key, values) => translator(["common"], language.get())(key, values)) as Translate,
  getFixedT: (_language: null, namespace: string | readonly string[]) =>
    translator(listed(namespace), language.get()),
  async changeLanguage(now: string) {
    language.set(now);
  },
};
export default spoken;

/** Returns the reader of words in a component, which renders again when the language changes. */
export function useTranslation(namespace?: string | readonly string[]) {
  const now = language.use();
  return { t: translator(listed(namespace), now), i18n: spoken };
}
