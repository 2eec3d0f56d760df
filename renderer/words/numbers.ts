import { localeOf } from "../../electron/domain/languages.ts";

/** A space that is narrow and does not break. */
const narrow = "\u202f";

/**
 * A number for people. The decimal mark is a point in every language: what stands on a screen is what is keyed, and what
 * stands in the sheets. Thousands are parted as English does, elsewhere by a space, which nobody takes for a decimal.
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
