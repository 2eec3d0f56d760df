import { randomBytes, scrypt, timingSafeEqual } from "node:crypto";
import { z } from "zod";

/** scrypt's cost: N a power of two, memory 128 · N · r bytes. RFC 7914 names the parameters. */
export interface Cost {
  readonly N: number;
  readonly r: number;
  readonly p: number;
}

/** A stored PIN: its derived key with all that is needed to derive it again. Never the PIN. */
export const keptPinSchema = z.strictObject({
  salt: z.base64(),
  key: z.base64(),
  // Bounds on the work that a file may demand; a PIN with a lower cost is not ours.
  N: z
    .int()
    .min(2 ** 15)
    .max(2 ** 20),
  r: z.literal(8),
  p: z.literal(1),
});

export type KeptPin = z.infer<typeof keptPinSchema>;

/** 128 MB and about a third of a second. */
export const usualCost = { N: 2 ** 17, r: 8, p: 1 } as const;

const saltBytes = 16;
const keyBytes = 32;

/** Computes scrypt by RFC 7914, off the main thread. */
export function derive(secret: string, salt: Uint8Array, length: number, { N, r, p }: Cost): Promise<Buffer> {
  const options = { N, r, p, maxmem: 256 * N * r };
  return new Promise((resolve, reject) => {
    scrypt(secret, salt, length, options, (error, key) => {
      if (error === null) resolve(key);
      else reject(error);
    });
  });
}

/** Stores a PIN with its own salt: the same PIN on another computer, or set again, is stored differently. */
export async function keepPin(pin: string, N: number = usualCost.N): Promise<KeptPin> {
  const salt = randomBytes(saltBytes);
  const { r, p } = usualCost;
  const key = await derive(pin, salt, keyBytes, { N, r, p });
  return { salt: salt.toString("base64"), key: key.toString("base64"), N, r, p };
}

/** True if that is the PIN. The time it takes does not depend on how much of it is right. */
export async function isPin(pin: string, kept: KeptPin): Promise<boolean> {
  // HMAC fills a short key up with zero bytes, so that a PIN with one at its end would be the same to scrypt.
  if (!/^[0-9]+$/.test(pin)) return false;
  const expected = Buffer.from(kept.key, "base64");
  const key = await derive(pin, Buffer.from(kept.salt, "base64"), keyBytes, kept);
  return key.length === expected.length && timingSafeEqual(key, expected);
}
