import { createHash, randomBytes } from "node:crypto";
import { open, readFile, stat } from "node:fs/promises";
import { promisify } from "node:util";
import { deflateRaw, inflateRaw } from "node:zlib";
import { type BackupHeader, headerSchema, largestStore, mostIn } from "../domain/backups/records.ts";
import { keyOf, type Lock, lockBytes, unlockBytes } from "./cipher.ts";

/*
 * A backup is one file: a line that says what it is, a line of JSON (the header, of one block's length), then the
 * store's file, deflated, and encrypted if the organiser wants that. The header is outside the encryption so that a
 * stick can be listed without its passphrase; it is bound to the bytes, so that nobody can swap it.
 */
const signature = "Tapeline backup 1\n";
const headBytes = 2048;
const pack = promisify(deflateRaw);
const unpack = promisify(inflateRaw);

/** The reason why a backup can't be used. */
export class BackupUnusable extends Error {
  readonly why: "unreadable" | "locked" | "wrong-passphrase";
  constructor(why: BackupUnusable["why"]) {
    super(`backup: ${why}`);
    this.why = why;
  }
}

export type Facts = Pick<BackupHeader, "number" | "source" | "at" | "holding" | "anew">;

/** Packs a store's file into a backup. */
export async function packBackup(store: Buffer, facts: Facts, lock: Lock | null): Promise<Buffer> {
  if (store.length > largestStore) throw new Error("the store is too large for a backup");
  const nonce = randomBytes(12);
  const header: BackupHeader = {
    ...facts,
    bytes: store.length,
    sha256: sha256(store),
    locked: lock === null ? null : { scrypt: lock.scrypt, nonce: nonce.toString("base64") },
  };
  const head = asHead(header);
  const packed = await pack(store);
  return Buffer.concat([head, lock === null ? packed : lockBytes(lock.key, nonce, head, packed)]);
}

/** Reads a backup's header. @throws BackupUnusable */
export async function readHeader(file: string): Promise<BackupHeader> {
  const head = Buffer.alloc(headBytes);
  const handle = await open(file, "r");
  try {
    const { bytesRead } = await handle.read(head, 0, headBytes, 0);
    return headerIn(head.subarray(0, bytesRead));
  } finally {
    await handle.close();
  }
}

/** The means to open a locked backup: a passphrase, or a lock known to this computer. */
export type Opener = { readonly passphrase: string } | { readonly lock: Lock } | null;

/** Unpacks the store's file from a backup and proves every byte. @throws BackupUnusable */
export async function unpackBackup(
  file: string,
  opener: Opener,
): Promise<{ header: BackupHeader; store: Buffer }> {
  if ((await stat(file)).size > headBytes + 2 * largestStore) throw new BackupUnusable("unreadable");
  const whole = await readFile(file);
  const head = whole.subarray(0, headBytes);
  const header = headerIn(head);
  const packed = await unlocked(header, head, whole.subarray(headBytes), opener);
  if (header.bytes > mostIn(packed.length)) throw new BackupUnusable("unreadable");
  const store = await unpack(packed, { maxOutputLength: header.bytes }).catch(() => undefined);
  if (store?.length !== header.bytes || sha256(store) !== header.sha256)
    throw new BackupUnusable("unreadable");
  return { header, store };
}

async function unlocked(header: BackupHeader, head: Buffer, body: Buffer, opener: Opener): Promise<Buffer> {
  const { locked } = header;
  if (locked === null) return body;
  const key = await keyFor(locked.scrypt, opener);
  if (key === undefined) throw new BackupUnusable("locked");
  const bytes = unlockBytes(key, Buffer.from(locked.nonce, "base64"), head, body);
  if (bytes === undefined) throw new BackupUnusable("wrong-passphrase");
  return bytes;
}

async function keyFor(scrypt: Lock["scrypt"], opener: Opener): Promise<Buffer | undefined> {
  if (opener === null) return undefined;
  if ("passphrase" in opener) return keyOf(opener.passphrase, scrypt);
  return opener.lock.scrypt.salt === scrypt.salt ? opener.lock.key : undefined;
}

function asHead(header: BackupHeader): Buffer {
  const text = `${signature}${JSON.stringify(header)}`;
  if (Buffer.byteLength(text) >= headBytes) throw new Error("a backup's header is too long");
  return Buffer.from(`${text.padEnd(headBytes - 1, " ")}\n`);
}

function headerIn(head: Buffer): BackupHeader {
  const text = head.toString("utf8");
  if (head.length !== headBytes || !text.startsWith(signature)) throw new BackupUnusable("unreadable");
  const parsed = headerSchema.safeParse(parsedJson(text.slice(signature.length)));
  if (!parsed.success) throw new BackupUnusable("unreadable");
  return parsed.data;
}

function parsedJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

function sha256(bytes: Buffer): string {
  return createHash("sha256").update(bytes).digest("hex");
}
