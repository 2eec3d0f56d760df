import type { FormatterModule } from "i18next";
import { useTranslation } from "react-i18next";
import { localeOf } from "../../electron/domain/languages.ts";

/** A narrow no-break space. */
const narrow = "\u202f";

/**
 * A number for people, with the decimal mark of the language. Thousands are parted as English does, elsewhere by a
 * space, which nobody takes for a decimal.
 */
export function writeNumber(
  number: number,
  language: string,
  options: Intl.NumberFormatOptions = {},
): string {
  const parts = new Intl.NumberFormat(localeOf(language), options).formatToParts(number);
  return parts.map(({ type, value }) => (type === "group" && language !== "en" ? narrow : value)).join("");
}

/** Numbers and times with at most a unit: "6:12.4", "+3.25 landings", "3.00 s"; no date, no version, no words. */
const numbersAlone = /^[-+−]?\d+(?::\d\d)*\.\d+(?:\s?[\p{L}%]{1,12})?$/u;

/** A number as the domain writes it, with a point, as people read it: "29.5" is "29,5" in Spanish. Other text stays. */
export function showNumber(text: string, language: string): string {
  return numbersAlone.test(text) ? text.replace(".", decimalMark(language)) : text;
}

/** The texts of fields before anybody types: shown as they would be typed. */
export function showNumbers(
  texts: Readonly<Record<string, string>>,
  language: string,
): Readonly<Record<string, string>> {
  return Object.fromEntries(Object.entries(texts).map(([name, text]) => [name, showNumber(text, language)]));
}

/** "," in Spanish. */
export function decimalMark(language: string): string {
  const parts = new Intl.NumberFormat(localeOf(language)).formatToParts(0.5);
  return parts.find(({ type }) => type === "decimal")?.value ?? ".";
}

/** `const show = useShowNumber(); show("29.5")`: renders again when the language changes. */
export function useShowNumber(): (text: string) => string {
  const { i18n } = useTranslation();
  return (text) => showNumber(text, i18n.language);
}

/** Values of sentences that people typed, or that name a thing: they stay as they are, even where they look like numbers. */
const asTyped = new Set(
  "name title text file folder path league origin source reason note by initials version first second query message".split(
    " ",
  ),
);

/** Writes the numbers in a sentence as its language does: an extension of i18next, to be used with `alwaysFormat`. */
export const inSentences: FormatterModule = {
  type: "formatter",
  init() {},
  add() {},
  addCached() {},
  format(value: unknown, _format, language = "en", options) {
    if (asTyped.has(String(options?.interpolationkey))) return value as string;
    const isNumber = typeof value === "number" || typeof value === "string";
    return isNumber ? showNumber(String(value), language) : (value as string);
  },
};
