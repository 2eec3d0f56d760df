/**
 * Characters at the start of a cell that make a spreadsheet run it: the list of OWASP "CSV Injection" (= + - @ tab CR
 * LF) with the full-width forms that some spreadsheets treat alike.
 */
const dangerous = "=+\\-@\\t\\r＝＋－＠";
/**
 * Matches the starts of cells: the text's start, and after every character at which some reader splits a line. In many
 * countries that is the semicolon, and our quotation marks mean nothing there. After a line break a second one only
 * makes the line empty.
 */
const start = `(?:(?<=^|[,;\\t"])(?='*[\\n${dangerous}])|(?<=[\\r\\n])(?='*[${dangerous}]))`;
const starts = new RegExp(start, "g");
const madeHarmless = new RegExp(`${start.replaceAll("(?='*", "(?=''*")}'`, "g");

/**
 * Escapes text for a sheet that leaves: an apostrophe goes before whatever a spreadsheet would run, wherever it splits
 * the text. Only for text: {@link numberText} writes a number such as -0.5, which stays a number.
 */
export function harmless(text: string): string {
  return text.replace(starts, "'");
}

/** Undoes {@link harmless}, so that every text comes back as it was. */
export function restored(text: string): string {
  return text.replace(madeHarmless, "");
}

/** True for a plain number: that is data, and no spreadsheet runs it. */
export function isNumberText(text: string): boolean {
  return /^-?\d+(\.\d+)?$/.test(text);
}

/** Formats a number for all our sheets: plain digits, a point, no exponent. */
export function numberText(value: number): string {
  const text = String(Object.is(value, -0) ? 0 : value);
  if (!isNumberText(text)) throw new RangeError(`The number ${text} has no plain form for a sheet.`);
  return text;
}
