import { Refusal } from "../domain/refusal.ts";
import { sheetLimits } from "../domain/sheets/limits.ts";
import { type Sentence, sentence } from "../domain/words.ts";

/** First bytes of files that are no text. Sources: the formats' specifications (PNG: RFC 2083, PDF: ISO 32000 …). */
const beginnings: readonly (readonly [bytes: readonly number[], why: () => Sentence])[] = [
  [[0x89, 0x50, 0x4e, 0x47], () => sentence("sheets.picture")],
  [[0xff, 0xd8, 0xff], () => sentence("sheets.picture")],
  [[0x47, 0x49, 0x46, 0x38], () => sentence("sheets.picture")],
  [[0x52, 0x49, 0x46, 0x46], () => sentence("sheets.picture")],
  [[0xd0, 0xcf, 0x11, 0xe0], () => sentence("sheets.oldWorkbook")],
  [[0x25, 0x50, 0x44, 0x46], () => sentence("sheets.document")],
];

/**
 * The byte order marks of UTF-16, which is what spreadsheets call "Unicode text". Without its mark it is not told from
 * something broken. Source: RFC 2781, section 3.2.
 */
const utf16Marks: readonly (readonly [mark: readonly number[], encoding: "utf-16le" | "utf-16be"])[] = [
  [[0xff, 0xfe], "utf-16le"],
  [[0xfe, 0xff], "utf-16be"],
];

/**
 * Reads the text of a sheet's bytes: UTF-16 with its byte order mark, UTF-8 with or without one, else Windows-1252,
 * which every byte can be read as. A picture, an old workbook or anything else that is no text is refused by what it is.
 * @throws Refusal `bad-input`
 */
export function decodeSheet(bytes: Uint8Array): string {
  refuseEmptyOrBig(bytes);
  const known = beginnings.find(([beginning]) => beginsWith(bytes, beginning));
  if (known !== undefined) throw refused(known[1]());
  const text = utf16Text(bytes) ?? eightBitText(bytes);
  if (text.includes("\0")) throw refused(sentence("sheets.nul"));
  if (text.trim() === "") throw refused(sentence("sheets.empty"));
  if (looksBinary(text)) throw refused(sentence("sheets.binary"));
  return text;
}

/** @throws Refusal `bad-input` when there is nothing in a file, or too much. */
export function refuseEmptyOrBig({ length }: Uint8Array): void {
  if (length === 0) throw refused(sentence("sheets.empty"));
  refuseTooBig(length);
}

/** @throws Refusal `bad-input` when a sheet of so many bytes is not even looked at. */
export function refuseTooBig(length: number): void {
  if (length > sheetLimits.bytes) {
    throw refused(sentence("sheets.tooBig", { megabytes: sheetLimits.bytes / 1024 / 1024 }));
  }
}

function refused(why: Sentence): Refusal {
  return new Refusal("bad-input", why);
}

function beginsWith(bytes: Uint8Array, beginning: readonly number[]): boolean {
  return beginning.every((byte, index) => bytes[index] === byte);
}

function utf16Text(bytes: Uint8Array): string | undefined {
  const marked = utf16Marks.find(([mark]) => beginsWith(bytes, mark));
  return marked === undefined ? undefined : new TextDecoder(marked[1]).decode(bytes);
}

function eightBitText(bytes: Uint8Array): string {
  // Looked for in the bytes: half of a UTF-16 text without its mark is NUL, and decoding 20 MB of it costs.
  if (bytes.includes(0)) throw refused(sentence("sheets.nul"));
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder("windows-1252").decode(bytes);
  }
}

/** True if over one in fifty characters never occurs in text: a binary file that happens to hold no NUL. */
function looksBinary(text: string): boolean {
  const start = text.slice(0, 65_536);
  const controls = start.match(/\p{Cc}|\ufffd/gu) ?? [];
  const strange = controls.filter((sign) => !"\t\n\v\f\r\u001b".includes(sign));
  return strange.length * 50 > start.length;
}
