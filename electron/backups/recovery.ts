import { join } from "node:path";
import { type Numbered, ownFirst } from "../domain/backups/order.ts";
import type { BackupHeader, Holding } from "../domain/backups/records.ts";
import { Refusal } from "../domain/refusal.ts";
import type { StoreLocation } from "../store/connection/connect.ts";
import { acceptable, type StoreRefused } from "../store/connection/refused.ts";
import { setAside } from "../store/keeping/set-aside.ts";
import { type Opener, proveBackup, unpackBackup } from "./file.ts";
import { type FoundBackup, headersIn } from "./folder.ts";
import { backupPlaces, forgottenBy, isThere, ownBackups, settingsBeside } from "./places.ts";
import { glanceAt, restoreStore } from "./restore.ts";
import { keptSettings, lockOf, readSettings } from "./settings.ts";
import { whyNotUsed } from "./trouble.ts";

/** A backup that can be restored when the store can't be opened. */
export interface Offer {
  readonly at: string;
  readonly holding: Holding;
  /** True if it needs its passphrase, which this computer does not know. */
  readonly locked: boolean;
  /** True if every byte of it was read and proved. */
  readonly proved: boolean;
  /** True for a backup of this store; another computer's is of another hall, and is listed below. */
  readonly own: boolean;
  /** The name by which the computer that made it calls itself. */
  readonly source: string;
}

export interface Offers {
  /** Backups of this store first, the newest good one at the head, by number and not by the clock. */
  readonly backups: readonly Offer[];
  /** The counts that the unopened store still shows; null if it shows none. */
  readonly held: Holding | null;
  /** True if it may be opened as it is. */
  readonly asItIs: boolean;
  /** True if anything may be done here at all: a newer version's store is intact, and not ours to move. */
  readonly anything: boolean;
}

/** The possible actions when a store is refused. Nothing happens until a person decides. */
export interface Recovery {
  offers(): Promise<Offers>;
  /** Searches another folder for backups too. */
  lookIn(folder: string): void;
  /**
   * Sets the current store aside and restores the offered backup in its place.
   * @throws Refusal with what to do; nothing was moved then.
   */
  goBack(index: number, passphrase: string | null): Promise<void>;
  /** Sets the current store aside, so that the next opening makes a new one. */
  startAnew(): void;
}

/** Most backups that a page can show, separately for own and others'. */
const most = 4;

interface Candidate {
  readonly file: string;
  readonly header: BackupHeader;
  readonly opener: Opener;
  readonly own: boolean;
}

interface Found extends Candidate {
  readonly offer: Offer;
}

export function createRecovery(location: StoreLocation, refused: StoreRefused, now: () => Date): Recovery {
  const kept = keptSettings(settingsBeside(location.file));
  const settings = kept ?? readSettings(settingsBeside(location.file));
  const lock = lockOf(settings);
  const forgotten = forgottenBy(settings);
  const ownFolder = ownBackups(location.file);
  const places = backupPlaces(ownFolder, settings).filter(isThere);
  const folders = new Set(places.map(({ folder }) => folder));
  const anything = refused.reason !== "newer" || refused.doubted;
  let found: Found[] = [];

  async function find(): Promise<void> {
    const all = (await Promise.all([...folders].map(inFolder))).flat();
    const once = all.filter((each, index) => all.findIndex((other) => same(other, each)) === index);
    const ordered = ownFirst(once, ({ own }) => own).map(({ backup }) => backup);
    const own = await offered(ordered.filter((each) => each.own));
    const others = ordered.filter((each) => !each.own);
    found = [...own, ...(own.length === 0 ? await offered(others) : others.map(unproved)).slice(0, most)];
  }

  async function inFolder(folder: string): Promise<(Candidate & Numbered)[]> {
    const listed: FoundBackup[] = await headersIn(folder).catch(() => []);
    return listed.flatMap((each) => {
      const { name, header } = each;
      if (header === null || forgotten(each)) return [];
      const known = lock !== null && header.locked?.scrypt.salt === lock.scrypt.salt;
      const { source, number } = header;
      // If this computer's own name is lost, the backups beside the store are its own.
      const own = kept === null ? folder === ownFolder : source === kept.source;
      const opener = known && lock !== null ? { lock } : null;
      return [{ file: join(folder, name), header, opener, own, source, number }];
    });
  }

  return {
    async offers() {
      if (anything) await find();
      const asItIs = acceptable.includes(refused.reason);
      return { backups: found.map(({ offer }) => offer), held: glanceAt(location), asItIs, anything };
    },
    lookIn(folder) {
      folders.add(folder);
      folders.add(join(folder, "Tapeline backups"));
    },
    async goBack(index, passphrase) {
      const chosen = found[index];
      if (chosen === undefined) throw new Refusal("not-found", whyNotUsed(new Error("no such backup")));
      try {
        const opener = passphrase === null ? chosen.opener : { passphrase };
        const { store } = await unpackBackup(chosen.file, opener);
        restoreStore(location, store, now());
      } catch (error) {
        throw new Refusal("conflict", whyNotUsed(error));
      }
    },
    startAnew() {
      if (anything) setAside(location.file, now());
    },
  };
}

/** Looks for the newest intact backup by reading; of the others it reads only the headers. */
async function offered(newestFirst: readonly Candidate[]): Promise<Found[]> {
  const found: Found[] = [];
  let proved = false;
  for (const each of newestFirst) {
    if (found.length >= most) break;
    const toRead: boolean = !proved && !isLocked(each);
    if (toRead && !(await isWhole(each))) continue;
    proved ||= toRead;
    const { offer } = unproved(each);
    found.push({ ...each, offer: { ...offer, proved: toRead } });
  }
  return found;
}

function unproved(each: Candidate): Found {
  const { at, holding, source } = each.header;
  return { ...each, offer: { at, holding, source, own: each.own, locked: isLocked(each), proved: false } };
}

function isLocked({ header, opener }: Candidate): boolean {
  return header.locked !== null && opener === null;
}

/** True for the same backup in two places. */
function same(a: Numbered, b: Numbered): boolean {
  return a.source === b.source && a.number === b.number;
}

async function isWhole({ file, opener }: Candidate): Promise<boolean> {
  return proveBackup(file, opener).then(
    () => true,
    () => false,
  );
}
