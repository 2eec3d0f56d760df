import { createHash } from "node:crypto";
import type { Seed } from "../../domain/chance.ts";

/** Makes a seed from a text: the first 128 bits of its SHA-256. */
export function seedOf(text: string): Seed {
  const hash = createHash("sha256").update(text).digest();
  // The last bit of the last part is set: all zeros is no seed.
  return [
    hash.readUInt32BE(0),
    hash.readUInt32BE(4),
    hash.readUInt32BE(8),
    (hash.readUInt32BE(12) | 1) >>> 0,
  ];
}
