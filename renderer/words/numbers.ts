import { localeOf } from "../../electron/domain/languages.ts";

/** A narrow no-break space. */
const narrow = "\u202f";

/**
 * Formats a number for people. The decimal mark is a point in every language, as in entries and on sheets. Thousands
 * are grouped as in English, elsewhere by a space, which nobody takes for a decimal mark.
 */
export function writeNumber(
  number: number,
  language: string,
  options: Intl.NumberFormatOptions = {},
): string {
  const parts = new Intl.NumberFormat(localeOf(language), options).formatToParts(number);
  return parts
    .map(({ type, value }) => {
      if (type === "decimal") return ".";
      return type === "group" && language !== "en" ? narrow : value;
    })
    .join("");
}
