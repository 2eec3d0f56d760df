import { type DBSchema, type IDBPDatabase, openDB } from "idb";

/** Something sealed: nobody reads it without the key, which no script can take out of this browser. */
interface Sealed {
  readonly iv: Uint8Array<ArrayBuffer>;
  readonly sealed: ArrayBuffer;
}

interface DeviceSchema extends DBSchema {
  keys: { key: string; value: CryptoKey };
  rows: { key: number; value: Sealed };
}

/** The rows of a device on its own disk, sealed (AES-GCM, NIST SP 800-38D, with 96 bits of chance for each). */
export interface SealedRows {
  /** Returns all rows in the order in which they were added; those that no longer open are left out. */
  all(): Promise<(readonly [number: number, row: unknown])[]>;
  /** Resolves to the row's number once it is on the disk. */
  add(row: unknown): Promise<number>;
  replace(number: number, row: unknown): Promise<void>;
  remove(number: number): Promise<void>;
}

const name = "tapeline-device";
const keyName = "seal";

/** Opens this device's rows; makes their key the first time. */
export async function openSealedRows(): Promise<SealedRows> {
  const db = await openDB<DeviceSchema>(name, 1, {
    upgrade(fresh) {
      fresh.createObjectStore("keys");
      fresh.createObjectStore("rows", { autoIncrement: true });
    },
    // Another tab wipes the device: it must not wait for this one.
    blocking: (_current, _next, { target }) => (target as IDBDatabase).close(),
  });
  const key = await keyIn(db);
  const write = () => db.transaction("rows", "readwrite", { durability: "strict" });
  return {
    async all() {
      const from = db.transaction("rows");
      const [numbers, rows] = await Promise.all([from.store.getAllKeys(), from.store.getAll()]);
      const opened = await Promise.all(rows.map((row) => unseal(key, row)));
      return numbers.flatMap((number, at) => {
        const row = opened[at];
        return row === undefined ? [] : [[number, row] as const];
      });
    },
    async add(row) {
      const sealed = await seal(key, row);
      const to = write();
      const [number] = await Promise.all([to.store.add(sealed), to.done]);
      return number;
    },
    async replace(number, row) {
      const sealed = await seal(key, row);
      const to = write();
      await Promise.all([to.store.put(sealed, number), to.done]);
    },
    async remove(number) {
      const to = write();
      await Promise.all([to.store.delete(number), to.done]);
    },
  };
}

/** True if this device has rows, or had some before they were all sent. */
export async function hasSealedRows(): Promise<boolean> {
  return (await indexedDB.databases()).some((each) => each.name === name);
}

/** Deletes all rows of this device, and the key with them. */
export function wipeSealedRows(): Promise<void> {
  return new Promise((resolve, reject) => {
    const wiping = indexedDB.deleteDatabase(name);
    wiping.onsuccess = () => resolve();
    wiping.onerror = () => reject(wiping.error);
  });
}

/** Returns the key, which the browser keeps and gives nobody the bits of; two tabs that begin at once have one. */
async function keyIn(db: IDBPDatabase<DeviceSchema>): Promise<CryptoKey> {
  const kept = await db.get("keys", keyName);
  if (kept !== undefined) return kept;
  const fresh = await crypto.subtle.generateKey({ name: "AES-GCM", length: 256 }, false, [
    "encrypt",
    "decrypt",
  ]);
  const to = db.transaction("keys", "readwrite", { durability: "strict" });
  const first = await to.store.get(keyName);
  if (first === undefined) await to.store.add(fresh, keyName);
  await to.done;
  return first ?? fresh;
}

async function seal(key: CryptoKey, row: unknown): Promise<Sealed> {
  const iv = crypto.getRandomValues(new Uint8Array(12));
  const plain = new TextEncoder().encode(JSON.stringify(row));
  return { iv, sealed: await crypto.subtle.encrypt({ name: "AES-GCM", iv }, key, plain) };
}

/** Returns what was sealed; undefined when it was changed since, or its key is gone. */
async function unseal(key: CryptoKey, { iv, sealed }: Sealed): Promise<unknown> {
  try {
    const plain = await crypto.subtle.decrypt({ name: "AES-GCM", iv }, key, sealed);
    return JSON.parse(new TextDecoder().decode(plain));
  } catch {
    return undefined;
  }
}
