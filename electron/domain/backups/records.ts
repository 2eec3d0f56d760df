import { z } from "zod";

/** What is kept beside a store and inside its backups; each is read through its schema. */

/** A stretch of a write-ahead log from its beginning: the salts that make it this log and no other, and how far. */
const stretchSchema = z.strictObject({
  salt: z.string().regex(/^[0-9a-f]{16}$/),
  bytes: z.int().positive(),
});
export type Stretch = Readonly<z.infer<typeof stretchSchema>>;

/** See `store/seal.ts`. */
export const sealSchema = z.strictObject({
  /** Goes up with each seal; a tally belongs to the seal of its number. */
  number: z.int().positive(),
  /** Of the store's file, with the log's stretch laid over it. */
  file: z.strictObject({ bytes: z.int().nonnegative(), sha256: z.string().regex(/^[0-9a-f]{64}$/) }),
  /** Null where there was no log. Once the stretch is in the file, the file alone has the sum. */
  log: stretchSchema.nullable(),
});
export type Seal = Readonly<z.infer<typeof sealSchema>>;

/** How far the log reached after the last commit since a seal. */
export const tallySchema = z.strictObject({
  number: z.int().nonnegative(),
  /** Null before the first commit that was answered. */
  log: stretchSchema.nullable(),
  /** The store was closed: nothing was committed after the seal. */
  shut: z.boolean(),
});
export type LogTally = Readonly<z.infer<typeof tallySchema>>;

/** How much a store holds: enough to say what a backup of it lacks. */
export const holdingSchema = z.strictObject({
  days: z.int().nonnegative(),
  athletes: z.int().nonnegative(),
  attempts: z.int().nonnegative(),
  /** When the newest attempt was entered (ISO 8601); null when there is none. */
  newestAttempt: z.string().max(40).nullable(),
});
export type Holding = Readonly<z.infer<typeof holdingSchema>>;

const base64 = z.string().regex(/^[A-Za-z0-9+/]{1,100}={0,2}$/);

/** How a key is made of a passphrase: scrypt (RFC 7914). Bounded, since a file from anywhere may ask for it. */
const scryptSchema = z.strictObject({
  N: z.union([z.literal(2 ** 15), z.literal(2 ** 16), z.literal(2 ** 17), z.literal(2 ** 18)]),
  r: z.literal(8),
  p: z.literal(1),
  salt: base64,
});
export type ScryptParameters = Readonly<z.infer<typeof scryptSchema>>;

/**
 * No store comes near it (256 MiB): a day of 500 athletes is some 3 MB. A file from anywhere may promise more, and that much
 * memory would be taken before anything of it is proved.
 */
export const largestStore = 2 ** 28;

/** How much of a store a backup can hold by how long it is: stores become 5 to 40 times shorter, an empty one most. */
export function mostIn(packedBytes: number): number {
  return Math.min(largestStore, 2 ** 24 + 64 * packedBytes);
}

/** What stands at the head of a backup, readable without its passphrase: nothing about anybody. */
export const headerSchema = z.strictObject({
  /** Goes up with each backup of a store: the order, whatever the clock said. */
  number: z.int().positive(),
  /** Which computer's store it is of: random, made once. */
  source: z.string().regex(/^[0-9a-f]{8}$/),
  /** When it was made (ISO 8601), by that computer's clock. */
  at: z.iso.datetime(),
  holding: holdingSchema,
  /** Of the store's file inside, unpacked. */
  bytes: z.int().positive().max(largestStore),
  sha256: z.string().regex(/^[0-9a-f]{64}$/),
  /** Null for one that anybody can open. */
  locked: z.strictObject({ scrypt: scryptSchema, nonce: base64 }).nullable(),
});
export type BackupHeader = Readonly<z.infer<typeof headerSchema>>;

/** What the organiser decided about backups; kept outside the store, which may be what is lost. */
export const settingsSchema = z.strictObject({
  source: headerSchema.shape.source,
  /** The folder of the second backups; null for none. */
  second: z.string().max(4096).nullable(),
  /** What locks them: the key and how it is made again of the passphrase, which is kept nowhere. */
  lock: z.strictObject({ scrypt: scryptSchema, key: base64 }).nullable(),
  /** Backups up to this number still hold somebody who was erased; they go from every place as it is reached. */
  forgetUpTo: z.int().nonnegative(),
});
export type BackupSettings = Readonly<z.infer<typeof settingsSchema>>;
