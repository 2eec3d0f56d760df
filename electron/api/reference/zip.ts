import { crc32, inflateRawSync } from "node:zlib";
import { bundleLimits } from "../../domain/reference/limits.ts";
import { refused, shown, tooBig } from "../../domain/reference/refused.ts";
import { sentence } from "../../domain/words.ts";

/** One entry by the directory at a zip's end. */
interface Entry {
  readonly name: string;
  readonly packed: boolean;
  readonly crc: number;
  readonly packedBytes: number;
  readonly bytes: number;
  /** Start of the entry, with its own header. */
  readonly at: number;
}

/** The most that a zip may hold (bytes), unpacked too. */
export interface ZipLimits {
  readonly bytes: number;
  readonly entries: number;
  /** Unpacked size of one file, and of all together. */
  readonly entryBytes: number;
  readonly totalBytes: number;
}

const ending = { signature: 0x06054b50, bytes: 22, longestComment: 0xffff };
const central = { signature: 0x02014b50, bytes: 46 };
const local = { signature: 0x04034b50, bytes: 30 };

/**
 * Reads the files of somebody else's zip in memory; nothing is ever written under its names. Follows its directory as
 * strictly as possible: plain and deflated entries of one part, no password, no gaps in the directory, no two entries
 * in one place, names that `isKnown`. Unpacked sizes are bounded before and during unpacking. Source: APPNOTE 6.3.10
 * (section 4.3).
 * @throws Refusal `bad-input`
 */
export function readZip(
  zip: Uint8Array,
  isKnown: (name: string) => boolean,
  limits: ZipLimits = bundleLimits,
): Map<string, Uint8Array> {
  if (zip.length > limits.bytes) throw tooBig(limits.bytes);
  const view = new DataView(zip.buffer, zip.byteOffset, zip.byteLength);
  if (zip.length < 4 || view.getUint16(0, true) !== 0x4b50) throw refused(sentence("reference.notZip"));
  const entries = entriesOf(view, limits);
  requireNames(entries, isKnown);
  requireSizes(
    entries.map(({ bytes }) => bytes),
    limits,
  );
  const files = new Map<string, Uint8Array>();
  // End of the last entry; entries that share bytes are how a few bytes become many.
  let end = 0;
  for (const entry of entries.toSorted((a, b) => a.at - b.at)) {
    const from = dataOf(view, entry);
    if (entry.at < end) throw damaged();
    end = from + entry.packedBytes;
    if (end > zip.length) throw damaged();
    files.set(entry.name, unpack(zip.subarray(from, end), entry));
  }
  return files;
}

function damaged(): Error {
  return refused(sentence("reference.damaged"));
}

function entriesOf(view: DataView, limits: ZipLimits): Entry[] {
  const at = endingOf(view);
  const [disk, startDisk] = [view.getUint16(at + 4, true), view.getUint16(at + 6, true)];
  const [here, count] = [view.getUint16(at + 8, true), view.getUint16(at + 10, true)];
  const [bytes, start] = [view.getUint32(at + 12, true), view.getUint32(at + 16, true)];
  if (disk !== 0 || startDisk !== 0 || here !== count || start + bytes !== at) throw damaged();
  if (count > limits.entries) throw swells();
  const entries: Entry[] = [];
  let next = start;
  for (let index = 0; index < count; index += 1) {
    if (next + central.bytes > at || view.getUint32(next, true) !== central.signature) throw damaged();
    const [name, extra, comment] = [28, 30, 32].map((field) => view.getUint16(next + field, true)) as Lengths;
    const after = next + central.bytes + name + extra + comment;
    if (after > at) throw damaged();
    entries.push(entryOf(view, next, textAt(view, next + central.bytes, name)));
    next = after;
  }
  if (next !== at) throw damaged();
  return entries;
}

type Lengths = [name: number, extra: number, comment: number];

/** Finds the record that ends a zip, followed only by its own comment. */
function endingOf(view: DataView): number {
  const last = view.byteLength - ending.bytes;
  for (let at = last; at >= Math.max(0, last - ending.longestComment); at -= 1) {
    if (view.getUint32(at, true) !== ending.signature) continue;
    if (at + ending.bytes + view.getUint16(at + 20, true) === view.byteLength) return at;
  }
  throw damaged();
}

function entryOf(view: DataView, at: number, name: string): Entry {
  const flags = view.getUint16(at + 8, true);
  const method = view.getUint16(at + 10, true);
  if ((flags & 0b10_0000_0100_0001) !== 0) throw refused(sentence("reference.locked"));
  if (method !== 0 && method !== 8) throw damaged();
  return {
    ...{ name, packed: method === 8, crc: view.getUint32(at + 16, true) },
    ...{ packedBytes: view.getUint32(at + 20, true), bytes: view.getUint32(at + 24, true) },
    at: view.getUint32(at + 42, true),
  };
}

function textAt(view: DataView, at: number, length: number): string {
  return new TextDecoder("latin1").decode(new Uint8Array(view.buffer, view.byteOffset + at, length));
}

function requireNames(entries: readonly Entry[], isKnown: (name: string) => boolean): void {
  const outside = entries.find(({ name }) => leadsOutside(name));
  if (outside !== undefined) throw refused(sentence("reference.outside", { name: shown(outside.name) }));
  const stray = entries.find(({ name }) => !isKnown(name));
  if (stray !== undefined) throw refused(sentence("reference.stray", { name: shown(stray.name) }));
  if (new Set(entries.map(({ name }) => name)).size !== entries.length) throw damaged();
}

/** True for names outside the folder, or from the root of a disk: `../x`, `/x`, `\x`, `C:x`. */
function leadsOutside(name: string): boolean {
  return /^[\\/]|^[a-z]:|(?:^|[\\/])\.\.(?:[\\/]|$)/i.test(name);
}

/**
 * Checks the unpacked sizes of files (bytes); of those that a directory tells, unpacking checks that they are true.
 * @throws Refusal `bad-input`
 */
export function requireSizes(sizes: readonly number[], { entryBytes, totalBytes }: ZipLimits): void {
  const total = sizes.reduce((sum, bytes) => sum + bytes, 0);
  if (sizes.some((bytes) => bytes > entryBytes) || total > totalBytes) throw swells();
}

function swells(): Error {
  return refused(sentence("reference.swells"));
}

/** Returns the start of an entry's bytes, after its own header, which must have the same name. */
function dataOf(view: DataView, { at, name }: Entry): number {
  if (at + local.bytes > view.byteLength || view.getUint32(at, true) !== local.signature) throw damaged();
  const [nameLength, extra] = [view.getUint16(at + 26, true), view.getUint16(at + 28, true)];
  const from = at + local.bytes + nameLength + extra;
  if (from > view.byteLength || textAt(view, at + local.bytes, nameLength) !== name) throw damaged();
  return from;
}

/** Unpacks an entry, never to more bytes than it claims. */
function unpack(data: Uint8Array, { packed, bytes, crc }: Entry): Uint8Array {
  const file = packed ? inflate(data, bytes) : data;
  if (file.length !== bytes || crc32(file) !== crc) throw damaged();
  return file;
}

function inflate(data: Uint8Array, most: number): Uint8Array {
  try {
    return inflateRawSync(data, { maxOutputLength: Math.max(most, 1) });
  } catch (error) {
    const code = error instanceof Error && "code" in error ? error.code : "";
    throw code === "ERR_BUFFER_TOO_LARGE" ? swells() : damaged();
  }
}
