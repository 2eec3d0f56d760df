import { Refusal } from "../domain/refusal.ts";
import { sheetLimits } from "../domain/sheets/limits.ts";
import { type Sentence, sentence } from "../domain/words.ts";

/**
 * First bytes of files that are no text. Sources: the formats' own specifications (RFC 2083 for PNG, ISO 32000 for PDF
 * …).
 */
const beginnings: readonly (readonly [bytes: readonly number[], why: () => Sentence])[] = [
  [[0x89, 0x50, 0x4e, 0x47], () => sentence("sheets.picture")],
  [[0xff, 0xd8, 0xff], () => sentence("sheets.picture")],
  [[0x47, 0x49, 0x46, 0x38], () => sentence("sheets.picture")],
  [[0x52, 0x49, 0x46, 0x46], () => sentence("sheets.picture")],
  [[0x50, 0x4b, 0x03, 0x04], () => sentence("sheets.workbook")],
  [[0xd0, 0xcf, 0x11, 0xe0], () => sentence("sheets.workbook")],
  [[0x25, 0x50, 0x44, 0x46], () => sentence("sheets.document")],
  [[0xff, 0xfe], () => sentence("sheets.utf16")],
  [[0xfe, 0xff], () => sentence("sheets.utf16")],
];

/**
 * Decodes a sheet: UTF-8 with or without byte order mark, else Windows-1252, which can read any byte. A picture, a
 * workbook or any other non-text file is refused by its kind.
 * @throws Refusal `bad-input`
 */
export function decodeSheet(bytes: Uint8Array): string {
  if (bytes.length === 0) throw refused(sentence("sheets.empty"));
  refuseTooBig(bytes.length);
  const known = beginnings.find(([beginning]) => beginning.every((byte, index) => bytes[index] === byte));
  if (known !== undefined) throw refused(known[1]());
  if (bytes.includes(0)) throw refused(sentence("sheets.nul"));
  const text = textOf(bytes);
  if (text.trim() === "") throw refused(sentence("sheets.empty"));
  if (looksBinary(text)) throw refused(sentence("sheets.binary"));
  return text;
}

/** @throws Refusal `bad-input` for a sheet of too many bytes, before it is read. */
export function refuseTooBig(length: number): void {
  if (length > sheetLimits.bytes) {
    throw refused(sentence("sheets.tooBig", { megabytes: sheetLimits.bytes / 1024 / 1024 }));
  }
}

function refused(why: Sentence): Refusal {
  return new Refusal("bad-input", why);
}

function textOf(bytes: Uint8Array): string {
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
