import i18next, { type TFunction } from "i18next";
import { useTranslation } from "react-i18next";
import { testCodes } from "../../electron/domain/tests/registry.ts";
import type { Sentence } from "../../electron/domain/words.ts";

/** Keys of sentences come over the wire, so the compiler cannot check them; a test does. */
type AnyKey = (key: string | readonly string[], values?: Record<string, unknown>) => string;

/** Values of sentences that are words of the program and not of people, and where their own words stand. */
const named: Readonly<Record<string, (value: string) => string | readonly string[]>> = {
  test: (code) => `${code}:name`,
  // Of which test a field is does not stand in the sentence; those of one name are called the same.
  field: (name) => testCodes.map((code) => `${code}:field.${name}`),
};

/** A sentence of the domain or the API in the language of now; for rendering use {@link useSay}. */
export function say(sentence: Sentence, translate: TFunction<never> = i18next.t as TFunction<never>): string {
  const any = translate as unknown as AnyKey;
  const key = sentence.key.includes(":") ? sentence.key : `sentences:${sentence.key}`;
  return any(key, inWords(sentence.values ?? {}, any));
}

/** A value without words of its own (a code from somewhere else, a field with none) is told as it is. */
function inWords(values: NonNullable<Sentence["values"]>, any: AnyKey): Record<string, unknown> {
  const told = Object.entries(values).map(([name, value]) => {
    const keyOf = named[name];
    const known = typeof value === "string" && keyOf !== undefined && /^[\w-]+$/.test(value);
    return [name, known ? any(keyOf(value), { defaultValue: value }) : value];
  });
  return Object.fromEntries(told);
}

/** `const say = useSay(); say(sentence)`: renders again when the language changes. */
export function useSay(): (sentence: Sentence) => string {
  const { t } = useTranslation();
  return (sentence) => say(sentence, t as unknown as TFunction<never>);
}
