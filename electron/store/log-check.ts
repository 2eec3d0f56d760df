import { existsSync, readFileSync } from "node:fs";

/** What a write-ahead log holds, judged by its own checksums. */
export interface LogState {
  /** How far it holds commits that are whole, in bytes; 0 where there is none. */
  readonly committed: number;
  /**
   * True where something in the middle of it is spoilt: after the first spoilt frame stands a whole commit and then
   * still more of the same log. A power cut can't leave that, since each commit waits for the one before it to be on the
   * disk; it leaves a torn end at most.
   */
  readonly spoilt: boolean;
}

const headerBytes = 32;
const frameHeaderBytes = 24;
const nothing: LogState = { committed: 0, spoilt: false };

/** Reads a log as SQLite's file format document describes it ("The WAL File Format", sqlite.org/walformat.html). */
export function checkLog(file: string): LogState {
  if (!existsSync(file)) return nothing;
  const log = readFileSync(file);
  if (log.length === 0) return nothing;
  if (log.length < headerBytes) return { committed: 0, spoilt: false };
  const magic = log.readUInt32BE(0);
  const bigEndian = (magic & 1) === 1;
  const header = sumOver(log, 0, 24, [0, 0], bigEndian);
  const sound = (magic | 1) === 0x377f0683 && sums(log, 24, header);
  // The header is written through before any frame is, so frames after a spoilt header were lost by damage.
  if (!sound) return { committed: 0, spoilt: log.length > headerBytes };
  return walk(log, header, bigEndian);
}

type Sum = readonly [number, number];

function walk(log: Buffer, start: Sum, bigEndian: boolean): LogState {
  const frame = frameHeaderBytes + log.readUInt32BE(8);
  let [sum, at, committed] = [start, headerBytes, 0];
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
    if (isCommit(log, at)) committed = at + frame;
  }
  return { committed, spoilt: goesOn(log, at, frame) };
}

/** Whether a whole commit and then more of this log follow the frame at `bad`, which is spoilt. */
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

/** A frame that ends a commit says how many pages the store has after it. */
function isCommit(log: Buffer, frame: number): boolean {
  return log.readUInt32BE(frame + 4) !== 0;
}

function sums(log: Buffer, at: number, [first, second]: Sum): boolean {
  return log.readUInt32BE(at) === first && log.readUInt32BE(at + 4) === second;
}

/** The log's own checksum, carried on from `before`: over pairs of 32-bit words. */
function sumOver(log: Buffer, from: number, to: number, before: Sum, bigEndian: boolean): Sum {
  let [first, second] = before;
  const read = bigEndian ? log.readUInt32BE.bind(log) : log.readUInt32LE.bind(log);
  for (let at = from; at < to; at += 8) {
    first = (first + read(at) + second) >>> 0;
    second = (second + read(at + 4) + first) >>> 0;
  }
  return [first, second];
}
