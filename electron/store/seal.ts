import { createHash } from "node:crypto";
import {
  closeSync,
  existsSync,
  fsyncSync,
  openSync,
  readFileSync,
  readSync,
  rmSync,
  writeSync,
} from "node:fs";
import { type Seal, sealSchema, type Tally, tallySchema } from "../domain/backups/records.ts";

/*
 * What guards the bytes of a store's file. SQLite checks the shape of its pages and not what is in them: a flipped bit
 * inside a name or a number passes every check it has. With a write-ahead log the main file changes at checkpoints
 * alone, so beside it lies its seal: how long it was after the last one, and the SHA-256 of all of it. What came later
 * is in the log, whose frames carry checksums of their own (`log-check.ts`); how far the log reached after the last
 * commit stands in the tally, so that a log which lost its end is noticed too.
 */
export const sealFile = (store: string) => `${store}-seal`;
export const tallyFile = (store: string) => `${store}-tally`;
export const logFile = (store: string) => `${store}-wal`;

/** The parts beside a store's file that belong to it. */
export const besides: readonly string[] = ["-wal", "-shm", "-seal", "-tally"];

/** The seal beside a store, or undefined where there is none that can be read: then nothing is proved. */
export function readSeal(store: string): Seal | undefined {
  return readGuarded(sealFile(store), sealSchema);
}

export function readTally(store: string): Tally | undefined {
  return readGuarded(tallyFile(store), tallySchema);
}

/** Writes the seal through to the disk. It keeps its place and its length, so that a full disk does not stop it. */
export function writeSeal(store: string, seal: Seal): void {
  const file = openSync(sealFile(store), existsSync(sealFile(store)) ? "r+" : "w");
  try {
    writeSync(file, asRecord(seal), 0);
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
}

/** Opens the tally for `noteTally`. */
export function openTally(store: string): number {
  return openSync(tallyFile(store), existsSync(tallyFile(store)) ? "r+" : "w");
}

export function noteTally(file: number, tally: Tally): void {
  writeSync(file, asRecord(tally), 0);
}

/** Length and SHA-256 of a file as it lies there. */
export function fileSum(file: string): { bytes: number; sha256: string } {
  const hash = createHash("sha256");
  const block = Buffer.allocUnsafe(1 << 20);
  const opened = openSync(file, "r");
  try {
    let bytes = 0;
    for (;;) {
      const read = readSync(opened, block, 0, block.length, bytes);
      if (read === 0) return { bytes, sha256: hash.digest("hex") };
      hash.update(block.subarray(0, read));
      bytes += read;
    }
  } finally {
    closeSync(opened);
  }
}

/** Takes seal and tally away, for a store that is made anew. */
export function dropSeal(store: string): void {
  for (const file of [sealFile(store), tallyFile(store)]) rmSync(file, { force: true });
}

interface Schema<Value> {
  safeParse(value: unknown): { success: true; data: Value } | { success: false };
}

const recordBytes = 256;

/** One block of fixed length: the record, its own checksum, and blanks. */
function asRecord(value: Seal | Tally): string {
  const text = JSON.stringify(value);
  return `${text}\n${sumOf(text)}\n`.padEnd(recordBytes, " ");
}

function readGuarded<Value>(file: string, schema: Schema<Value>): Value | undefined {
  if (!existsSync(file)) return undefined;
  const [text = "", sum] = readFileSync(file, "utf8").split("\n");
  if (sum !== sumOf(text)) return undefined;
  const parsed = schema.safeParse(JSON.parse(text));
  return parsed.success ? parsed.data : undefined;
}

function sumOf(text: string): string {
  return createHash("sha256").update(text).digest("hex").slice(0, 32);
}
