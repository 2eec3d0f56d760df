import { createHash } from "node:crypto";
import { closeSync, fsyncSync, openSync, readFileSync, writeSync } from "node:fs";
import { type LogTally, type Seal, sealSchema, tallySchema } from "../../domain/backups/records.ts";
import { writeWholeText } from "../../files/through.ts";

/*
 * What guards the bytes of a store's file. SQLite checks the shape of its pages and not what is in them: a flipped bit
 * inside a name or a number passes every check it has. So beside the file lies its seal: the SHA-256 of what the file
 * holds once a stretch of the log is laid over it. With a write-ahead log the main file changes at checkpoints alone,
 * and a checkpoint does nothing but lay the log over the file; so a seal that is written before it holds before, in the
 * middle of it, and after it. What came later is in the log, whose frames carry checksums of their own
 * (`log-check.ts`); how far the log reached after the last commit stands in the tally, so that a log which lost its end,
 * or is another one, is noticed too. The tally is kept twice, the second time in the file of the seal: no two of the
 * files can be harmed together so that nothing tells.
 */
export const sealFile = (store: string) => `${store}-seal`;
export const tallyFile = (store: string) => `${store}-tally`;
export const logFile = (store: string) => `${store}-wal`;

/** The parts beside a store's file that belong to it. */
export const besides: readonly string[] = ["-wal", "-shm", "-seal", "-tally"];

/** A record that was kept, or why there is none: what is there and can't be read was there once, and was harmed. */
type Kept<Record> = Record | "absent" | "unreadable";

export interface Guards {
  readonly seal: Kept<Seal>;
  /** The newest of its two places; unreadable where one of them is. */
  readonly tally: Kept<LogTally>;
}

/** Reads what guards a store, of which it says nothing yet. */
export function readGuards(store: string): Guards {
  const sealed = contentOf(sealFile(store));
  const seal = recordIn(sealed, 0, sealSchema);
  const own = recordIn(contentOf(tallyFile(store)), 0, tallySchema);
  return { seal, tally: newest(own, recordIn(sealed, secondPlace, tallySchema)) };
}

/** The first seal is on the disk before there is any tally: the copy beside it says so by the number 0. */
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

/** The handles of the files beside an open store. */
export interface GuardFiles {
  readonly seal: number;
  readonly tally: number;
}

/** Makes both files anew, whole or not at all each, and opens them. */
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

/** Writes the seal through to the disk. It keeps its place and its length, so that a full disk does not stop it. */
export function writeSeal({ seal: file }: GuardFiles, seal: Seal): void {
  writeSync(file, asRecord(seal), 0);
  fsyncSync(file);
}

/** Notes the tally in both its places, to memory alone. */
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
/** In a sector of its own, so that noting the tally never writes on the seal. */
const secondPlace = 512;

/** One block of fixed length: the record, its own checksum, and blanks. */
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

/** A lack of rights is no damage and is thrown. */
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
