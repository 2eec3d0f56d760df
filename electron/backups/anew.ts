import { join } from "node:path";
import { setImmediate } from "node:timers/promises";
import { renumbered } from "../domain/backups/names.ts";
import type { BackupHeader } from "../domain/backups/records.ts";
import type { StoreLocation } from "../store/connection/connect.ts";
import { rewriteBytes } from "../store/connection/open.ts";
import type { Store } from "../store/connection/store.ts";
import { packBackup, unpackBackup } from "./file.ts";
import { type FoundBackup, headersIn, placeBackup } from "./folder.ts";
import { type BackupPlace, isThere } from "./places.ts";

/** Takes somebody out of a store that was backed up; false where it can't be told who they are in it. */
export type TakeOut = (store: Store) => boolean;

/** What becomes of earlier backups at an erasure. */
export interface EarlierBackups {
  /** Those that are made again without the person. */
  readonly anew: number;
  /** Those that are deleted: damaged, or locked with another passphrase. */
  readonly gone: number;
}

/** A backup in the places that have it. */
interface Placed {
  readonly found: FoundBackup & { readonly header: BackupHeader };
  readonly places: readonly BackupPlace[];
}

interface Which {
  readonly source: string;
  /** Those up to this number hold somebody who was erased before, and go. */
  readonly after: number;
  readonly upTo: number;
}

/** Counts what would become of the backups that can be reached now. */
export async function countEarlier(places: readonly BackupPlace[], which: Which): Promise<EarlierBackups> {
  const names = new Map<string, boolean>();
  for (const place of places.filter(isThere)) {
    for (const found of await earlierIn(place, which)) {
      names.set(found.name, names.get(found.name) === true || canOpen(found, place));
    }
  }
  const anew = [...names.values()].filter(Boolean).length;
  return { anew, gone: names.size - anew };
}

/**
 * Makes the earlier backups again without somebody, in the places that can be reached, under numbers after `upTo`: their
 * day and hour stay, and so does their order. The old files are the caller's to delete. One that can't be opened or
 * proved is left out.
 */
export async function makeAnew(
  places: readonly BackupPlace[],
  which: Which,
  location: StoreLocation,
  takeOut: TakeOut,
  told: (done: number, total: number) => void,
): Promise<number> {
  const all = await placedBackups(places, which);
  let made = 0;
  for (const [index, placed] of all.entries()) {
    told(index, all.length);
    if (await makeOne(placed, which.upTo + 1 + index, location, takeOut)) made += 1;
    // Each takes a moment of the one thread that the desk has.
    await setImmediate();
  }
  return made;
}

async function makeOne(
  { found, places }: Placed,
  number: number,
  location: StoreLocation,
  takeOut: TakeOut,
): Promise<boolean> {
  const [first] = places.filter((place) => canOpen(found, place));
  if (first === undefined) return false;
  try {
    const opener = first.lock === null ? null : { lock: first.lock };
    const { store, networkKey } = await unpackBackup(join(first.folder, found.name), opener);
    const rewritten = rewriteBytes(store, location, takeOut);
    if (rewritten === null) return false;
    const { source, at } = found.header;
    const facts = { number, source, at, holding: rewritten.holding, anew: true } as const;
    for (const place of places) {
      const { lock } = place;
      // Out of memory: nothing of it is on a disk but what is packed.
      const made = { from: { store: rewritten.store }, networkKey, facts, lock };
      await placeBackup(place.folder, renumbered(found, number), (file) => packBackup(file, made));
    }
    return true;
  } catch (error) {
    console.error(`The backup ${found.name} could not be made again:`, error);
    return false;
  }
}

/** Every earlier backup once, in the order of its number, with the places that have it. */
async function placedBackups(places: readonly BackupPlace[], which: Which): Promise<Placed[]> {
  const all = new Map<string, { found: Placed["found"]; places: BackupPlace[] }>();
  for (const place of places.filter(isThere)) {
    for (const found of await earlierIn(place, which)) {
      if (found.header === null) continue;
      const placed = all.get(found.name) ?? { found: { ...found, header: found.header }, places: [] };
      placed.places.push(place);
      all.set(found.name, placed);
    }
  }
  return [...all.values()].sort((a, b) => a.found.number - b.found.number);
}

async function earlierIn({ folder }: BackupPlace, { source, after, upTo }: Which): Promise<FoundBackup[]> {
  const all = await headersIn(folder).catch(() => []);
  return all.filter((each) => each.source === source && each.number > after && each.number <= upTo);
}

/** Whether this computer can open a backup without being told a passphrase. */
function canOpen({ header }: FoundBackup, { lock }: BackupPlace): boolean {
  if (header === null) return false;
  return header.locked === null || header.locked.scrypt.salt === lock?.scrypt.salt;
}
