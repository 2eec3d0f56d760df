import { createHash, randomBytes } from "node:crypto";
import { open, readFile, stat } from "node:fs/promises";
import { promisify } from "node:util";
import { deflateRaw, inflateRaw } from "node:zlib";
import {
  type BackupHeader,
  headerSchema,
  largestStore,
  mostIn,
  type SealedKey,
} from "../domain/backups/records.ts";
import { keyOf, type Lock, lockBytes, unlockBytes } from "./cipher.ts";
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

/** What a backup holds. */
export interface Contents {
  /** The store's file. */
  readonly store: Buffer;
  /** The key by which devices know the table (PKCS #8, PEM); null without one, and in a backup that is not locked. */
  readonly networkKey: string | null;
}

/** Packs a store's file into a backup, and the network's key if the backup is locked. */
export async function packBackup(
  { store, networkKey }: Contents,
  facts: Facts,
  lock: Lock | null,
): Promise<Buffer> {
  if (store.length > largestStore) throw new Error("the store is too large for a backup");
  const nonce = randomBytes(12);
  const header: BackupHeader = {
    ...facts,
    bytes: store.length,
    sha256: sha256(store),
    locked: lock === null ? null : lockedHead(lock, nonce, networkKey),
  };
  const head = asHead(header);
  const packed = await pack(store);
  return Buffer.concat([head, lock === null ? packed : lockBytes(lock.key, nonce, head, packed)]);
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

/** Unpacks a backup and proves every byte. @throws BackupUnusable */
export async function unpackBackup(
  file: string,
  opener: Opener,
): Promise<Contents & { readonly header: BackupHeader }> {
  if ((await stat(file)).size > headBytes + 2 * largestStore) throw new BackupUnusable("unreadable");
  const whole = await readFile(file);
  const head = whole.subarray(0, headBytes);
  const header = headerIn(head);
  const { packed, networkKey } = await unlocked(header, head, whole.subarray(headBytes), opener);
  if (header.bytes > mostIn(packed.length)) throw new BackupUnusable("unreadable");
  const store = await unpack(packed, { maxOutputLength: header.bytes }).catch(() => undefined);
  if (store?.length !== header.bytes || sha256(store) !== header.sha256)
    throw new BackupUnusable("unreadable");
  return { header, store, networkKey };
}

interface Unlocked extends Pick<Contents, "networkKey"> {
  readonly packed: Buffer;
}

async function unlocked(
  { locked }: BackupHeader,
  head: Buffer,
  body: Buffer,
  opener: Opener,
): Promise<Unlocked> {
  if (locked === null) return { packed: body, networkKey: null };
  const key = await keyFor(locked.scrypt, opener);
  if (key === undefined) throw new BackupUnusable("locked");
  const packed = unlockBytes(key, Buffer.from(locked.nonce, "base64"), head, body);
  if (packed === undefined) throw new BackupUnusable("wrong-passphrase");
  return { packed, networkKey: locked.networkKey === undefined ? null : openKey(key, locked.networkKey) };
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

function sha256(bytes: Buffer): string {
  return createHash("sha256").update(bytes).digest("hex");
}
