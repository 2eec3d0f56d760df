import { createHash } from "node:crypto";
import { closeSync, fsyncSync, openSync, readFileSync, writeSync } from "node:fs";
import { type LogTally, type Seal, sealSchema, tallySchema } from "../../domain/backups/records.ts";
import { writeWholeText } from "../../files/through.ts";

/*
 * The guards of a store's bytes. SQLite checks the shape of its pages and not their content: a flipped bit inside a
 * name or a number passes all its checks. So the file has a seal beside it: the sum of the file's pages
 * (`page-sums.ts`) with a stretch of the log applied. With a write-ahead log the main file changes only at checkpoints,
 * and a checkpoint only applies the log; so a seal written before a checkpoint is valid before, during and after it. Later changes are in the log, whose
 * frames carry their own checksums (`log-check.ts`). The tally holds the log's length after the last commit, so that a
 * log that lost its end, or another log, is noticed too. The tally is kept twice, the second time in the seal's file:
 * damage to any two of the files always shows.
 */
export const sealFile = (store: string) => `${store}-seal`;
export const tallyFile = (store: string) => `${store}-tally`;
export const logFile = (store: string) => `${store}-wal`;

/** Lies beside a store whose content was found damaged under a seal that holds: no start trusts the seal alone. */
export const doubtFile = (store: string) => `${store}-doubt`;

/** Endings of the files that belong to a store's file. */
export const besides: readonly string[] = ["-wal", "-shm", "-seal", "-tally", "-doubt"];

/** A record, or the reason why there is none: an unreadable one was there once and was damaged. */
type Kept<Record> = Record | "absent" | "unreadable";

export interface Guards {
  readonly seal: Kept<Seal>;
  /** The newer of its two copies; unreadable if either of them is. */
  readonly tally: Kept<LogTally>;
}

/** Reads a store's guards without judging the store. */
export function readGuards(store: string): Guards {
  const sealed = contentOf(sealFile(store));
  const seal = recordIn(sealed, 0, sealSchema);
  const own = recordIn(contentOf(tallyFile(store)), 0, tallySchema);
  return { seal, tally: newest(own, recordIn(sealed, secondPlace, tallySchema)) };
}

/** Returns the newer tally. Number 0 in the seal's file: the first seal was on the disk before any tally. */
function newest(own: Kept<LogTally>, beside: Kept<LogTally>): Kept<LogTally> {
  if (own === "unreadable" || beside === "unreadable") return "unreadable";
  if (own === "absent") return beside !== "absent" && beside.number === 0 ? beside : "absent";
  if (beside === "absent" || later(own, beside)) return own;
  return beside;
}

function later(a: LogTally, b: LogTally): boolean {
  if (a.number !== b.number) return a.number > b.number;
  return (a.log?.bytes ?? 0) >= (b.log?.bytes ?? 0);
}

/** Handles of the files beside an open store. */
export interface GuardFiles {
  readonly seal: number;
  readonly tally: number;
}

/** Makes both files, each whole or not at all, and opens them. */
export function makeGuardFiles(store: string, seal: Seal): GuardFiles {
  const none: LogTally = { number: 0, log: null, shut: false };
  writeWholeText(sealFile(store), asRecord(seal).padEnd(secondPlace, " ") + asRecord(none));
  writeWholeText(tallyFile(store), asRecord(none));
  return openGuardFiles(store);
}

export function openGuardFiles(store: string): GuardFiles {
  return { seal: openSync(sealFile(store), "r+"), tally: openSync(tallyFile(store), "r+") };
}

export function closeGuardFiles({ seal, tally }: GuardFiles): void {
  closeSync(seal);
  closeSync(tally);
}

/** Writes the seal and syncs it. Its place and length stay the same, so that a full disk does not stop it. */
export function writeSeal({ seal: file }: GuardFiles, seal: Seal): void {
  writeSync(file, asRecord(seal), 0);
  fsyncSync(file);
}

/** Writes the tally in both its places, without syncing. */
export function noteTally({ seal, tally: file }: GuardFiles, tally: LogTally): void {
  const record = asRecord(tally);
  writeSync(file, record, 0);
  writeSync(seal, record, secondPlace);
}

export function syncTally({ tally }: GuardFiles): void {
  fsyncSync(tally);
}

interface Schema<Value> {
  safeParse(value: unknown): { success: true; data: Value } | { success: false };
}

const recordBytes = 256;
/** In a sector of its own, so that writing the tally never touches the seal. */
const secondPlace = 512;

/** Formats a block of fixed length: the record, its own checksum, and spaces. */
function asRecord(value: Seal | LogTally): string {
  const text = JSON.stringify(value);
  return `${text}\n${sumOf(text)}\n`.padEnd(recordBytes, " ");
}

function recordIn<Value>(bytes: Kept<Buffer>, from: number, schema: Schema<Value>): Kept<Value> {
  if (typeof bytes === "string") return bytes;
  const [text = "", sum] = bytes.toString("utf8", from, from + recordBytes).split("\n");
  if (sum !== sumOf(text)) return "unreadable";
  const parsed = schema.safeParse(JSON.parse(text));
  return parsed.success ? parsed.data : "unreadable";
}

/** Reads a guard's file. Missing permissions are no damage, and are thrown. */
function contentOf(file: string): Kept<Buffer> {
  try {
    return readFileSync(file);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === "ENOENT") return "absent";
    if (code === "EIO") return "unreadable";
    throw error;
  }
}

function sumOf(text: string): string {
  return createHash("sha256").update(text).digest("hex").slice(0, 32);
}
