import { createHash, randomBytes } from "node:crypto";
import { createReadStream } from "node:fs";
import { type FileHandle, open, stat } from "node:fs/promises";
import { Readable } from "node:stream";
import { pipeline } from "node:stream/promises";
import { createDeflateRaw, createInflateRaw } from "node:zlib";
import {
  type BackupHeader,
  headerSchema,
  largestStore,
  mostIn,
  type SealedKey,
} from "../domain/backups/records.ts";
import { keyOf, type Lock, lockBytes, locking, tagBytes, unlockBytes, unlocking } from "./cipher.ts";
import { parsedJson } from "./settings.ts";

/*
 * A backup is one file: a line that says what it is, a line of JSON (the header, of one block's length), then the
 * store's file, deflated, and encrypted if the organiser wants that. The header is outside the encryption so that a
 * stick can be listed without its passphrase; it is bound to the bytes, so that nobody can swap it. The network's key is in
 * it, encrypted by itself, where the backup is locked, and nowhere in one that anybody can open.
 */
const signature = "Tapeline backup 1\n";
const headBytes = 2048;
const besideKey = Buffer.from("the network's key");
/** Bytes of a new backup after which the disk is waited for: an entry's own sync would have to wait for all of them. */
const syncEvery = 4 * 2 ** 20;

/** The reason why a backup can't be used. */
export class BackupUnusable extends Error {
  readonly why: "unreadable" | "locked" | "wrong-passphrase";
  constructor(why: BackupUnusable["why"]) {
    super(`backup: ${why}`);
    this.why = why;
  }
}

type Facts = Pick<BackupHeader, "number" | "source" | "at" | "holding" | "anew">;

/** What a backup holds. */
export interface Contents {
  /** The store's file. */
  readonly store: Buffer;
  /** The key by which devices know the table (PKCS #8, PEM); null without one, and in a backup that is not locked. */
  readonly networkKey: string | null;
}

/** A store's file to pack: a file that nothing changes any more, or its bytes. */
type StoreFile =
  | { readonly file: string; readonly bytes: number; readonly sha256: string }
  | { readonly store: Buffer };

export interface ToPack {
  readonly from: StoreFile;
  readonly networkKey: string | null;
  readonly facts: Facts;
  readonly lock: Lock | null;
}

/**
 * Packs a store's file into a new backup, and the network's key if the backup is locked; then reads it back as a restore
 * does. Of both files only pieces are in memory.
 * @throws BackupUnusable where it can't be read back, or the system's error
 */
export async function packBackup(target: string, { from, networkKey, facts, lock }: ToPack): Promise<void> {
  const { bytes, sha256 } = "store" in from ? { bytes: from.store.length, sha256: sumOf(from.store) } : from;
  if (bytes > largestStore) throw new Error("the store is too large for a backup");
  const nonce = randomBytes(12);
  const locked = lock === null ? null : lockedHead(lock, nonce, networkKey);
  const head = asHead({ ...facts, bytes, sha256, locked });
  const store = () => ("store" in from ? Readable.from([from.store]) : createReadStream(from.file));
  const handle = await open(target, "wx", 0o600);
  try {
    await handle.write(head);
    const write = (pieces: AsyncIterable<Buffer>) => writeAll(handle, pieces);
    if (lock === null) await pipeline(store(), createDeflateRaw(), write);
    else await pipeline(store(), createDeflateRaw(), locking(lock.key, nonce, head), write);
    await handle.sync();
  } finally {
    await handle.close();
  }
  const opener = lock === null ? null : { lock };
  await readBackup(target, opener, () => {});
}

async function writeAll(handle: FileHandle, pieces: AsyncIterable<Buffer>): Promise<void> {
  let unsynced = 0;
  for await (const piece of pieces) {
    await handle.writeFile(piece);
    unsynced += piece.length;
    if (unsynced < syncEvery) continue;
    await handle.datasync();
    unsynced = 0;
  }
}

function lockedHead({ scrypt, key }: Lock, nonce: Buffer, networkKey: string | null): BackupHeader["locked"] {
  const head = { scrypt, nonce: nonce.toString("base64") };
  return networkKey === null ? head : { ...head, networkKey: sealKey(key, networkKey) };
}

function sealKey(key: Buffer, networkKey: string): SealedKey {
  const nonce = randomBytes(12);
  const sealed = lockBytes(key, nonce, besideKey, Buffer.from(networkKey));
  return { nonce: nonce.toString("base64"), sealed: sealed.toString("base64") };
}

function openKey(key: Buffer, { nonce, sealed }: SealedKey): string {
  const bytes = Buffer.from(sealed, "base64");
  const opened = unlockBytes(key, Buffer.from(nonce, "base64"), besideKey, bytes);
  if (opened === undefined) throw new BackupUnusable("unreadable");
  return opened.toString();
}

/** Reads a backup's header. @throws BackupUnusable */
export async function readHeader(file: string): Promise<BackupHeader> {
  return headerIn(await headOf(file));
}

async function headOf(file: string): Promise<Buffer> {
  const head = Buffer.alloc(headBytes);
  const handle = await open(file, "r");
  try {
    const { bytesRead } = await handle.read(head, 0, headBytes, 0);
    return head.subarray(0, bytesRead);
  } finally {
    await handle.close();
  }
}

/** The means to open a locked backup: a passphrase, or a lock known to this computer. */
export type Opener = { readonly passphrase: string } | { readonly lock: Lock } | null;

/** Unpacks a backup and proves every byte. @throws BackupUnusable */
export async function unpackBackup(
  file: string,
  opener: Opener,
): Promise<Contents & { readonly header: BackupHeader }> {
  const pieces: Buffer[] = [];
  const found = await readBackup(file, opener, (piece) => pieces.push(piece));
  return { ...found, store: Buffer.concat(pieces) };
}

/** Proves every byte of a backup, of which only pieces are in memory. @throws BackupUnusable */
export async function proveBackup(file: string, opener: Opener): Promise<void> {
  await readBackup(file, opener, () => {});
}

/** Reads a backup through, piece by piece of the store's file; it is proved only when all of it was read. */
async function readBackup(
  file: string,
  opener: Opener,
  take: (piece: Buffer) => void,
): Promise<{ readonly header: BackupHeader; readonly networkKey: string | null }> {
  const { size } = await stat(file);
  if (size > headBytes + 2 * largestStore) throw new BackupUnusable("unreadable");
  const head = await headOf(file);
  const header = headerIn(head);
  const { locked } = header;
  const key = locked === null ? null : await keyFor(locked.scrypt, opener);
  if (key === undefined) throw new BackupUnusable("locked");
  const packed = size - headBytes - (key === null ? 0 : tagBytes);
  if (packed <= 0 || header.bytes > mostIn(packed)) throw new BackupUnusable("unreadable");
  const body = () => createReadStream(file, { start: headBytes, end: headBytes + packed - 1 });
  const hash = createHash("sha256");
  let bytes = 0;
  const unpacked = async (pieces: AsyncIterable<Buffer>) => {
    for await (const piece of pieces) {
      bytes += piece.length;
      // No more is taken than was promised.
      if (bytes > header.bytes) throw new BackupUnusable("unreadable");
      hash.update(piece);
      take(piece);
    }
  };
  const asUnreadable = () => {
    throw new BackupUnusable("unreadable");
  };
  if (locked === null || key === null)
    await pipeline(body(), createInflateRaw(), unpacked).catch(asUnreadable);
  else {
    const nonce = Buffer.from(locked.nonce, "base64");
    const tag = await tagAt(file, size - tagBytes);
    // Nothing of it is unpacked before all of it was found to be as it was locked.
    const isAsLocked = await pipeline(body(), unlocking(key, nonce, head, tag), drained).then(
      () => true,
      () => false,
    );
    if (!isAsLocked) throw new BackupUnusable("wrong-passphrase");
    const opened = unlocking(key, nonce, head, tag);
    await pipeline(body(), opened, createInflateRaw(), unpacked).catch(asUnreadable);
  }
  if (bytes !== header.bytes || hash.digest("hex") !== header.sha256) throw new BackupUnusable("unreadable");
  const sealed = locked?.networkKey;
  return { header, networkKey: key === null || sealed === undefined ? null : openKey(key, sealed) };
}

async function drained(pieces: AsyncIterable<Buffer>): Promise<void> {
  for await (const _piece of pieces);
}

async function tagAt(file: string, at: number): Promise<Buffer> {
  const handle = await open(file, "r");
  try {
    const { buffer } = await handle.read(Buffer.alloc(tagBytes), 0, tagBytes, at);
    return buffer;
  } finally {
    await handle.close();
  }
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

function sumOf(bytes: Buffer): string {
  return createHash("sha256").update(bytes).digest("hex");
}
