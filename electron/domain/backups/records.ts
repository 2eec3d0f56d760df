import { z } from "zod";

/** The records kept beside a store and inside its backups; each is read through its schema. */

/** A stretch of a write-ahead log from its beginning: the salts that identify the log, and the stretch's length. */
const stretchSchema = z.strictObject({
  salt: z.string().regex(/^[0-9a-f]{16}$/),
  bytes: z.int().positive(),
});
export type Stretch = Readonly<z.infer<typeof stretchSchema>>;

const sha256Schema = z.string().regex(/^[0-9a-f]{64}$/);

/**
 * The sum of a file by its pages: its length, and the hash of the list of its pages' hashes, in their order. A page that
 * changes costs two hashes, whatever the file's length.
 */
const pagedSumSchema = z.strictObject({
  bytes: z.int().nonnegative(),
  pageBytes: z.int().min(512).max(65_536),
  pages: sha256Schema,
});
export type PagedSum = Readonly<z.infer<typeof pagedSumSchema>>;

/** The sum that seals had before: the hash of the whole file. The next seal of such a store is one by pages. */
const wholeSumSchema = z.strictObject({ bytes: z.int().nonnegative(), sha256: sha256Schema });
export type WholeSum = Readonly<z.infer<typeof wholeSumSchema>>;

/** The seal of a store's file; see `store/keeping/seal.ts`. */
export const sealSchema = z.strictObject({
  /** Goes up with each seal; a tally belongs to the seal of its number. */
  number: z.int().positive(),
  /** The sum of the store's file with the log's stretch applied. */
  file: z.union([pagedSumSchema, wholeSumSchema]),
  /** Null where there was no log. Once the stretch is checkpointed, the file alone has this sum. */
  log: stretchSchema.nullable(),
});
export type Seal = Readonly<z.infer<typeof sealSchema>>;

/** The log's length after the last commit since a seal. */
export const tallySchema = z.strictObject({
  number: z.int().nonnegative(),
  /** Null before the first commit that was answered. */
  log: stretchSchema.nullable(),
  /** The store was closed: nothing was committed after the seal. */
  shut: z.boolean(),
});
export type LogTally = Readonly<z.infer<typeof tallySchema>>;

/** Counts of a store's content: enough to say what a backup of it lacks. */
const holdingSchema = z.strictObject({
  days: z.int().nonnegative(),
  athletes: z.int().nonnegative(),
  attempts: z.int().nonnegative(),
  /** Entry time of the newest attempt (ISO 8601); null when there is none. */
  newestAttempt: z.string().max(40).nullable(),
});
export type Holding = Readonly<z.infer<typeof holdingSchema>>;

const base64 = z.string().regex(/^[A-Za-z0-9+/]{1,100}={0,2}$/);

/** The parameters that derive a key from a passphrase: scrypt (RFC 7914). Bounded, since any file may ask for it. */
const scryptSchema = z.strictObject({
  N: z.union([z.literal(2 ** 15), z.literal(2 ** 16), z.literal(2 ** 17), z.literal(2 ** 18)]),
  r: z.literal(8),
  p: z.literal(1),
  salt: base64,
});
export type ScryptParameters = Readonly<z.infer<typeof scryptSchema>>;

/**
 * Largest size of a store, in bytes (1 GiB); a day of 500 athletes is some 3 MB. A file from anywhere may claim more,
 * and that much memory would be allocated before any of it is proved.
 */
export const largestStore = 2 ** 30;

/** Returns the largest store, in bytes, that such a backup can hold: stores shrink 5 to 40 times, empty ones most. */
export function mostIn(packedBytes: number): number {
  return Math.min(largestStore, 2 ** 24 + 64 * packedBytes);
}

/** A private key, encrypted: its PEM is some 250 characters, and a header has room for no more than this. */
const sealedKeySchema = z.strictObject({
  nonce: base64,
  sealed: z.string().regex(/^[A-Za-z0-9+/]{1,600}={0,2}$/),
});
export type SealedKey = Readonly<z.infer<typeof sealedKeySchema>>;

/** The header of a backup, readable without its passphrase. It says nothing about any person. */
export const headerSchema = z.strictObject({
  /** Grows with each backup of a store and gives their order, whatever the clock said. */
  number: z.int().positive(),
  /** The computer whose store it is: random, made once. */
  source: z.string().regex(/^[0-9a-f]{8}$/),
  /** Time of making (ISO 8601), by that computer's clock. */
  at: z.iso.datetime(),
  holding: holdingSchema,
  /** Size of the store's file inside, unpacked. */
  bytes: z.int().positive().max(largestStore),
  sha256: sha256Schema,
  /** Made again later without somebody who was erased; left out for one that is as it was made. */
  anew: z.literal(true).exactOptional(),
  /** Null for a backup that anybody can open. `networkKey`: who the table is to its devices, encrypted by itself. */
  locked: z
    .strictObject({ scrypt: scryptSchema, nonce: base64, networkKey: sealedKeySchema.exactOptional() })
    .nullable(),
});
export type BackupHeader = Readonly<z.infer<typeof headerSchema>>;

/** The organiser's choices about backups, kept outside the store, which may be the thing that is lost. */
export const settingsSchema = z.strictObject({
  source: headerSchema.shape.source,
  /** The folder of the second backups; null for none. */
  second: z.string().max(4096).nullable(),
  /** The key that locks them, and how to derive it again from the passphrase, which is stored nowhere. */
  lock: z.strictObject({ scrypt: scryptSchema, key: base64 }).nullable(),
  /** Backups up to this number still hold somebody who was erased; each place deletes them when it is reached. */
  forgetUpTo: z.int().nonnegative(),
  /** An erasure that was begun, and the newest backup before it: a start that finds it done forgets those. */
  forgetting: z
    .strictObject({ erasureId: z.string().max(100), upTo: z.int().nonnegative() })
    .nullable()
    .default(null),
});
export type BackupSettings = Readonly<z.infer<typeof settingsSchema>>;
