/**
 * Signs at the start of a cell that make a spreadsheet run it: the list of OWASP "CSV Injection" (= + - @ tab CR LF)
 * with the full-width forms that some spreadsheets read alike.
 */
const dangerous = "=+\\-@\\t\\r＝＋－＠";
/**
 * Where a cell starts: at the text's start, and after every sign at which some reader splits a line, since in many
 * countries that is the semicolon and our quotation marks mean nothing to it. After a line break a second one only
 * makes the line empty.
 */
const start = `(?:(?<=^|[,;\\t"])(?='*[\\n${dangerous}])|(?<=[\\r\\n])(?='*[${dangerous}]))`;
const starts = new RegExp(start, "g");
const madeHarmless = new RegExp(`${start.replaceAll("(?='*", "(?=''*")}'`, "g");

/**
 * Text as it may stand in a sheet that leaves: whatever a spreadsheet would run, wherever it splits the text, gets an
 * apostrophe before it. For text alone: a number such as -0.5 is written by {@link numberText} and stays a number.
 */
export function harmless(text: string): string {
  return text.replace(starts, "'");
}

/** The way back: takes away what {@link harmless} put there, so that every text comes back as it was. */
export function restored(text: string): string {
  return text.replace(madeHarmless, "");
}

/** Whether a cell is a plain number: that is data, and no spreadsheet runs it. */
export function isNumberText(text: string): boolean {
  return /^-?\d+(\.\d+)?$/.test(text);
}

/** A number as every sheet of ours writes it: plain digits, a point, no exponent. */
export function numberText(value: number): string {
  const text = String(Object.is(value, -0) ? 0 : value);
  if (!isNumberText(text)) throw new RangeError(`The number ${text} has no plain form for a sheet.`);
  return text;
}
