import { hash } from "node:crypto";
import { fstatSync } from "node:fs";
import type { PagedSum } from "../../domain/backups/records.ts";
import { fill, laidOver } from "./laid-over.ts";
import { type LogState, pagesIn } from "./log-check.ts";

/** The SHA-256 of each page of a store's file, one after another, and what they come to. */
export interface PageSums {
  readonly sum: PagedSum;
  readonly list: Buffer;
}

const sumBytes = 32;

/**
 * Reads the sums of a file's pages with the first `upTo` bytes of its log applied; they are the same before, during and after
 * that checkpoint. `told` hears now and then how many bytes were read.
 */
export function readPageSums(
  file: number,
  log: LogState,
  upTo: number,
  pageBytes: number,
  told: (bytes: number) => void = () => {},
): PageSums {
  let list = Buffer.alloc(sumBytes * Math.ceil(fstatSync(file).size / pageBytes));
  let [bytes, end] = [0, 0];
  for (const block of laidOver(file, log, upTo)) {
    const pages = Math.ceil(block.length / pageBytes);
    if (end + sumBytes * pages > list.length) list = withLength(list, end + sumBytes * pages);
    for (let at = 0; at < block.length; at += pageBytes) {
      sumOf(block.subarray(at, at + pageBytes)).copy(list, end);
      end += sumBytes;
    }
    bytes += block.length;
    told(bytes);
  }
  return sumsOf(list.subarray(0, end), bytes, pageBytes);
}

/** Pages that a checkpoint looks at besides those that it replaces: 1 MB. A hall of some days is all looked at in a few. */
export const pagesInTurn = 256;

/**
 * Returns the sums after a checkpoint of the first `upTo` bytes of the log. Of the file only the pages that the log replaces
 * are read, and `pagesInTurn` others from `from` on. `sealed` are the sums of the file with the first `taken` bytes applied.
 * @throws NotAsSealed when one of those is not as it was sealed. Damage of any other page is not sealed over either: its sum
 * stays the one that it had
 */
export function sumsAfter(
  sealed: PageSums,
  file: number,
  log: LogState,
  { taken, upTo, from }: { readonly taken: number; readonly upTo: number; readonly from: number },
): PageSums {
  const { pageBytes } = sealed.sum;
  const before = pagesIn(log, taken).pages;
  const { pages, count } = upTo === 0 ? { pages: before, count: 0 } : pagesIn(log, upTo);
  requireLength(file, taken, sealed.sum.bytes);
  const there = sealed.list.length / sumBytes;
  const inTurn = Array.from({ length: Math.min(pagesInTurn, there) }, (_, at) => 1 + ((from + at) % there));
  const page = Buffer.allocUnsafe(pageBytes);
  for (const number of new Set([...pages.keys(), ...inTurn])) {
    if (number > there) continue;
    const known = before.get(number) ?? page.subarray(0, fill(file, page, (number - 1) * pageBytes));
    const at = sumBytes * (number - 1);
    if (sumOf(known).compare(sealed.list, at, at + sumBytes) !== 0) throw new NotAsSealed();
  }
  return upTo === 0 ? sealed : replaced(sealed, pages, count);
}

function replaced(
  { list: sealed, sum }: PageSums,
  pages: ReadonlyMap<number, Buffer>,
  count: number,
): PageSums {
  for (let number = sealed.length / sumBytes + 1; number <= count; number += 1) {
    if (!pages.has(number)) throw new Error(`page ${number} of the store is nowhere`);
  }
  const list = withLength(sealed, sumBytes * count);
  for (const [number, content] of pages) {
    // A store that became shorter: the log may still hold pages behind its new end.
    if (number <= count) sumOf(content).copy(list, sumBytes * (number - 1));
  }
  return sumsOf(list, count * sum.pageBytes, sum.pageBytes);
}

/** Thrown where a file is not as it was sealed: nothing may be sealed then. */
export class NotAsSealed extends Error {
  constructor() {
    super("the store's file is not as it was sealed");
  }
}

/** While a stretch of the log is still to be laid over the file, its length may be that before or after. */
function requireLength(file: number, taken: number, bytes: number): void {
  if (taken === 0 && fstatSync(file).size !== bytes) throw new NotAsSealed();
}

/** Returns a copy that is so long: what is added is not yet any page's sum. */
function withLength(list: Buffer, length: number): Buffer<ArrayBuffer> {
  const other = Buffer.alloc(length);
  list.copy(other);
  return other;
}

function sumsOf(list: Buffer, bytes: number, pageBytes: number): PageSums {
  return { list, sum: { bytes, pageBytes, pages: sumOf(list).toString("hex") } };
}

function sumOf(bytes: Buffer): Buffer {
  return hash("sha256", bytes, "buffer");
}
