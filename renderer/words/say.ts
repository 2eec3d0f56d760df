import i18next, { type TFunction } from "i18next";
import { useTranslation } from "react-i18next";
import { testCodes } from "../../electron/domain/tests/registry.ts";
import type { Sentence } from "../../electron/domain/words.ts";
import { writeDate } from "./dates.ts";

/** Sentence keys come over the wire, so the compiler can't check them; a test does. */
type AnyKey = (key: string | readonly string[], values?: Record<string, unknown>) => string;

/** Values in sentences that are the program's own words, and the keys of those words. */
const named: Readonly<Record<string, (value: string) => string | readonly string[]>> = {
  test: (code) => `${code}:name`,
  // The sentence does not say the field's test; fields of one name have the same label.
  field: (name) => testCodes.map((code) => `${code}:field.${name}`),
};

/** A day as it is stored (ISO 8601), which nobody reads in a sentence. */
const isoDate = /^\d{4}-\d\d-\d\d$/;

/** Translates a sentence of the domain or the API into the current language; for rendering use {@link useSay}. */
export function say(sentence: Sentence, translate: TFunction<never> = i18next.t as TFunction<never>): string {
  const any = translate as unknown as AnyKey;
  const key = sentence.key.includes(":") ? sentence.key : `sentences:${sentence.key}`;
  return any(key, inWords(sentence.values ?? {}, any));
}

/** Translates a sentence's values; one without its own words (a foreign code, a nameless field) stays as it is. */
function inWords(values: NonNullable<Sentence["values"]>, any: AnyKey): Record<string, unknown> {
  const told = Object.entries(values).map(([name, value]) => {
    if (name === "date" && typeof value === "string" && isoDate.test(value)) {
      return [name, writeDate(value, i18next.language)];
    }
    const keyOf = named[name];
    const known = typeof value === "string" && keyOf !== undefined && /^[\w-]+$/.test(value);
    return [name, known ? any(keyOf(value), { defaultValue: value }) : value];
  });
  return Object.fromEntries(told);
}

/** Returns `say` for rendering: `const say = useSay(); say(sentence)`. Renders again when the language changes. */
export function useSay(): (sentence: Sentence) => string {
  const { t } = useTranslation();
  return (sentence) => say(sentence, t as unknown as TFunction<never>);
}
