import { createHash } from "node:crypto";
import { closeSync, openSync, readSync } from "node:fs";
import { isDeepStrictEqual } from "node:util";
import type { Seal, WholeSum } from "../../domain/backups/records.ts";
import { type LogState, pagesIn } from "./log-check.ts";

/**
 * Returns the length and SHA-256 of a store's file with the first `upTo` bytes of its log applied, as a checkpoint
 * applies them; 0 for the file as it is. The sum is the same before, during and after that checkpoint.
 */
export function wholeSum(
  store: string,
  log: LogState,
  upTo: number,
  told: (bytes: number) => void = () => {},
): WholeSum {
  return reading(store, (file) => {
    const hash = createHash("sha256");
    let bytes = 0;
    for (const block of laidOver(file, log, upTo)) {
      hash.update(block);
      bytes += block.length;
      told(bytes);
    }
    return { bytes, sha256: hash.digest("hex") };
  });
}

/** Returns a store's whole content as SQLite reads it: the file with every whole commit of its log. */
export function contentOfStore(store: string, log: LogState): Buffer {
  return reading(store, (file) =>
    Buffer.concat(Array.from(laidOver(file, log, log.committed), (block) => Buffer.from(block))),
  );
}

/** Returns the first page of what `contentOfStore` returns; less where there is no whole page. */
export function firstPageOf(store: string, log: LogState): Buffer {
  return reading(store, (file) => {
    for (const block of laidOver(file, log, log.committed)) return Buffer.from(block.subarray(0, 4096));
    return Buffer.alloc(0);
  });
}

/** Opens a store that nothing has open, and closes it again. */
export function reading<Result>(store: string, work: (file: number) => Result): Result {
  const file = openSync(store, "r");
  try {
    return work(file);
  } finally {
    closeSync(file);
  }
}

/** Returns how many bytes of a log a seal covers; 0 for another log. */
export function takenIn({ log: stretch }: Seal, log: LogState): number {
  return stretch !== null && stretch.salt === log.salt ? stretch.bytes : 0;
}

export function sameSum(a: Seal["file"], b: Seal["file"]): boolean {
  return isDeepStrictEqual(a, b);
}

/**
 * Yields a file's content with the first `upTo` bytes of its log applied, in blocks of whole pages but for the last one, in
 * the same memory. `file` is a handle: closing one would drop SQLite's own locks on the file (sqlite.org/howtocorrupt.html,
 * 2.2).
 */
export function laidOver(file: number, log: LogState, upTo: number): Iterable<Buffer> {
  if (upTo === 0) return blocksOf(file);
  const { pages, count } = pagesIn(log, upTo);
  return pagesOf(file, log.pageBytes, count, pages);
}

/** Yields a file's content block by block, in the same memory. */
function* blocksOf(file: number): Generator<Buffer> {
  const block = Buffer.allocUnsafe(1 << 20);
  for (let at = 0; ; ) {
    const read = fill(file, block, at);
    if (read === 0) return;
    yield block.subarray(0, read);
    at += read;
  }
}

/**
 * Yields `count` pages, from the log where it has them. A page that is nowhere ends them, so that the length is wrong.
 */
function* pagesOf(
  file: number,
  pageBytes: number,
  count: number,
  pages: ReadonlyMap<number, Buffer>,
): Generator<Buffer> {
  const block = Buffer.allocUnsafe(256 * pageBytes);
  for (let first = 0; first < count; first += 256) {
    const many = Math.min(256, count - first);
    let there = fill(file, block.subarray(0, many * pageBytes), first * pageBytes);
    for (let index = 0; index < many; index += 1) {
      const page = pages.get(first + index + 1);
      page?.copy(block, index * pageBytes);
      if (page !== undefined && there >= index * pageBytes) there = Math.max(there, (index + 1) * pageBytes);
    }
    yield block.subarray(0, there);
    if (there < many * pageBytes) return;
  }
}

/** Reads until the block is full or the file ends; returns how many bytes there were. */
export function fill(file: number, block: Buffer, from: number): number {
  let read = 0;
  for (;;) {
    const more = readSync(file, block, read, block.length - read, from + read);
    if (more === 0) return read;
    read += more;
  }
}
