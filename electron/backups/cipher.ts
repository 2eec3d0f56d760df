import { createCipheriv, createDecipheriv, randomBytes, type ScryptOptions, scrypt } from "node:crypto";
import type { ScryptParameters } from "../domain/backups/records.ts";

/** A key of 32 bytes, and the parameters to derive it again from its passphrase. */
export interface Lock {
  readonly scrypt: ScryptParameters;
  readonly key: Buffer;
}

/** Length of what says whether anything was changed, at the end of what is encrypted. */
export const tagBytes = 16;

/** Makes a new lock: a third of a second of work, off the main thread, and as much for each of a guesser's tries. */
export async function newLock(passphrase: string): Promise<Lock> {
  const parameters: ScryptParameters = { N: 2 ** 17, r: 8, p: 1, salt: randomBytes(16).toString("base64") };
  return { scrypt: parameters, key: await keyOf(passphrase, parameters) };
}

/** Derives a lock's key from a passphrase. Letters that look the same are the same (NFKC). */
export function keyOf(passphrase: string, { N, r, p, salt }: ScryptParameters): Promise<Buffer> {
  const options: ScryptOptions = { N, r, p, maxmem: 256 * N * r };
  return deriveKey(passphrase.normalize("NFKC"), Buffer.from(salt, "base64"), 32, options);
}

/** Computes scrypt as defined by RFC 7914. */
export function deriveKey(
  passphrase: string,
  salt: Buffer,
  length: number,
  options: ScryptOptions,
): Promise<Buffer> {
  return new Promise((resolve, reject) => {
    scrypt(passphrase, salt, length, options, (error, key) =>
      error === null ? resolve(key) : reject(error),
    );
  });
}

/**
 * Encrypts by AES-256-GCM (NIST SP 800-38D): ciphertext, then the tag of 16 bytes. `beside` is readable but can't be
 * changed.
 */
export function lockBytes(key: Buffer, nonce: Buffer, beside: Buffer, bytes: Buffer): Buffer {
  const cipher = createCipheriv("aes-256-gcm", key, nonce, { authTagLength: tagBytes }).setAAD(beside);
  return Buffer.concat([cipher.update(bytes), cipher.final(), cipher.getAuthTag()]);
}

/** Decrypts the bytes; undefined if the key is wrong or anything was changed. */
export function unlockBytes(key: Buffer, nonce: Buffer, beside: Buffer, sealed: Buffer): Buffer | undefined {
  if (sealed.length < tagBytes) return undefined;
  const decipher = createDecipheriv("aes-256-gcm", key, nonce, { authTagLength: tagBytes }).setAAD(beside);
  decipher.setAuthTag(sealed.subarray(sealed.length - tagBytes));
  const start = decipher.update(sealed.subarray(0, sealed.length - tagBytes));
  try {
    return Buffer.concat([start, decipher.final()]);
  } catch {
    return undefined;
  }
}

/** Encrypts piece by piece what {@link lockBytes} encrypts at once. */
export function locking(
  key: Uint8Array,
  nonce: Buffer,
  beside: Buffer,
): (pieces: AsyncIterable<Buffer>) => AsyncGenerator<Buffer> {
  const cipher = createCipheriv("aes-256-gcm", key, nonce, { authTagLength: tagBytes }).setAAD(beside);
  return async function* (pieces) {
    for await (const piece of pieces) yield cipher.update(piece);
    yield cipher.final();
    yield cipher.getAuthTag();
  };
}

/** Decrypts piece by piece; only at its end it throws if the key is wrong or anything was changed. */
export function unlocking(
  key: Uint8Array,
  nonce: Buffer,
  beside: Buffer,
  tag: Buffer,
): (pieces: AsyncIterable<Buffer>) => AsyncGenerator<Buffer> {
  const decipher = createDecipheriv("aes-256-gcm", key, nonce, { authTagLength: tagBytes }).setAAD(beside);
  decipher.setAuthTag(tag);
  return async function* (pieces) {
    for await (const piece of pieces) yield decipher.update(piece);
    yield decipher.final();
  };
}
