import { closeSync, existsSync, openSync, readFileSync, readSync } from "node:fs";

/** The state of a write-ahead log, judged by its own checksums. */
export interface LogState {
  /** The two salts that its frames share, 16 hexadecimal digits; null where there is no log. */
  readonly salt: string | null;
  /** Length of its whole commits in bytes; 0 where there is none. */
  readonly committed: number;
  /** The end of each whole commit, in bytes. */
  readonly ends: readonly number[];
  /**
   * True if the middle of the log is damaged: after the first damaged frame there is a whole commit and then more of
   * the same log. A power cut can't leave that, since each commit waits until the one before it is on the disk; it
   * leaves at most a torn end.
   */
  readonly spoilt: boolean;
  /** Page size of the store. */
  readonly pageBytes: number;
  readonly bytes: Buffer;
}

export const headerBytes = 32;
export const frameHeaderBytes = 24;

/** Reads a log by SQLite's description of the format ("The WAL File Format", sqlite.org/walformat.html). */
export function checkLog(file: string): LogState {
  const bytes = existsSync(file) ? readFileSync(file) : Buffer.alloc(0);
  const nothing = { salt: null, committed: 0, ends: [], spoilt: false, pageBytes: 0, bytes };
  if (bytes.length < headerBytes) return nothing;
  const magic = bytes.readUInt32BE(0);
  const bigEndian = (magic & 1) === 1;
  const header = sumOver(bytes, 0, 24, [0, 0], bigEndian);
  const sound = (magic | 1) === 0x377f0683 && sums(bytes, 24, header);
  // SQLite syncs the header before any frame, so frames after a bad header were lost by damage.
  if (!sound) return { ...nothing, spoilt: bytes.length > headerBytes };
  return { ...nothing, ...walk(bytes, header, bigEndian) };
}

/** Returns a log's salts, unchecked; null where it has no header. */
export function saltOf(file: string): string | null {
  const header = Buffer.alloc(headerBytes);
  const opened = openSync(file, "r");
  try {
    return readSync(opened, header, 0, headerBytes, 0) < headerBytes ? null : saltIn(header);
  } finally {
    closeSync(opened);
  }
}

function saltIn(log: Buffer): string {
  return log.toString("hex", 16, 24);
}

/** Returns the newest content of each page in a stretch of the log, and the store's page count after it. */
export function pagesIn(log: LogState, upTo: number): { pages: Map<number, Buffer>; count: number } {
  const pages = new Map<number, Buffer>();
  const frame = frameHeaderBytes + log.pageBytes;
  let count = 0;
  for (let at = headerBytes; at < upTo; at += frame) {
    pages.set(log.bytes.readUInt32BE(at), log.bytes.subarray(at + frameHeaderBytes, at + frame));
    if (isCommit(log.bytes, at)) count = log.bytes.readUInt32BE(at + 4);
  }
  return { pages, count };
}

type Sum = readonly [number, number];

function walk(log: Buffer, start: Sum, bigEndian: boolean): Omit<LogState, "bytes"> {
  const pageBytes = log.readUInt32BE(8);
  const frame = frameHeaderBytes + pageBytes;
  const ends: number[] = [];
  let [sum, at] = [start, headerBytes];
  for (; at + frame <= log.length; at += frame) {
    if (!sameSalt(log, at)) break;
    sum = sumOver(
      log,
      at + frameHeaderBytes,
      at + frame,
      sumOver(log, at, at + 8, sum, bigEndian),
      bigEndian,
    );
    if (!sums(log, at + 16, sum)) break;
    if (isCommit(log, at)) ends.push(at + frame);
  }
  const spoilt = goesOn(log, at, frame);
  return { salt: saltIn(log), committed: ends.at(-1) ?? 0, ends, spoilt, pageBytes };
}

/** True if the damaged frame at `bad` is followed by a whole commit and then more of this log. */
function goesOn(log: Buffer, bad: number, frame: number): boolean {
  let commits = 0;
  for (let at = bad; at + frame <= log.length; at += frame) {
    if (!sameSalt(log, at) && at !== bad) continue;
    if (commits > 0) return true;
    if (isCommit(log, at)) commits += 1;
  }
  return false;
}

function sameSalt(log: Buffer, frame: number): boolean {
  return log.compare(log, 16, 24, frame + 8, frame + 16) === 0;
}

/** True if a frame ends a commit: it then holds the store's page count. */
function isCommit(log: Buffer, frame: number): boolean {
  return log.readUInt32BE(frame + 4) !== 0;
}

function sums(log: Buffer, at: number, [first, second]: Sum): boolean {
  return log.readUInt32BE(at) === first && log.readUInt32BE(at + 4) === second;
}

/** Computes the log's own checksum, continued from `before`, over pairs of 32-bit words. */
function sumOver(log: Buffer, from: number, to: number, before: Sum, bigEndian: boolean): Sum {
  let [first, second] = before;
  const words = new DataView(log.buffer, log.byteOffset, log.length);
  for (let at = from; at < to; at += 8) {
    first = (first + words.getUint32(at, !bigEndian) + second) >>> 0;
    second = (second + words.getUint32(at + 4, !bigEndian) + first) >>> 0;
  }
  return [first, second];
}
