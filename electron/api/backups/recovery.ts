import { join } from "node:path";
import type { BackupHeader, Holding } from "../../domain/backups/records.ts";
import { Refusal } from "../../domain/refusal.ts";
import { type Opener, unpackBackup } from "../../store/backup-file.ts";
import { type FoundBackup, headersIn } from "../../store/backup-folder.ts";
import { glanceAt, restoreStore } from "../../store/backup-restore.ts";
import { lockOf, readSettings } from "../../store/backup-settings.ts";
import type { StoreLocation } from "../../store/connect.ts";
import { acceptable, type StoreRefused } from "../../store/refused.ts";
import { setAside } from "../../store/set-aside.ts";
import { forgottenBy, isThere, ownBackups, placesOf, settingsBeside } from "./places.ts";
import { whyNotUsed } from "./trouble.ts";

/** A backup that can be gone back to when the store can't be opened. */
export interface Offer {
  readonly at: string;
  readonly holding: Holding;
  /** It needs its passphrase, which this computer does not know. */
  readonly locked: boolean;
  /** Every byte of it was read and found whole. */
  readonly proved: boolean;
}

export interface Offers {
  /** The newest good backup first. */
  readonly backups: readonly Offer[];
  /** What the store that is not opened still shows; null when it shows nothing. */
  readonly held: Holding | null;
  /** Whether it may be opened as it is. */
  readonly asItIs: boolean;
  /** Whether anything may be done here at all: a newer version's store is whole, and not ours to move. */
  readonly anything: boolean;
}

/** What can be done when a store is refused. Nothing is done until a person says so. */
export interface Recovery {
  offers(): Promise<Offers>;
  /** Looks for backups in another folder too. */
  lookIn(folder: string): void;
  /**
   * Sets aside what is there and puts the offered backup in its place.
   * @throws Refusal with what to do; nothing was moved then.
   */
  goBack(index: number, passphrase: string | null): Promise<void>;
  /** Sets aside what is there, so that the next opening begins anew. */
  startAnew(): void;
}

/** No more than a page can show. */
const most = 4;

interface Found {
  readonly file: string;
  readonly header: BackupHeader;
  readonly opener: Opener;
  readonly offer: Offer;
}

export function createRecovery(location: StoreLocation, refused: StoreRefused, now: () => Date): Recovery {
  const settings = readSettings(settingsBeside(location.file));
  const lock = lockOf(settings);
  const forgotten = forgottenBy(settings);
  const places = placesOf(ownBackups(location.file), settings).filter(isThere);
  const folders = new Set(places.map(({ folder }) => folder));
  const anything = refused.reason !== "newer" || refused.doubted;
  let found: Found[] = [];

  /** The newest that is whole is looked for by reading; the others say of themselves what they are. */
  async function find(): Promise<void> {
    const all = await Promise.all([...folders].map(inFolder));
    const newestFirst = all
      .flat()
      .filter((each, index, list) => list.findIndex(({ header }) => same(header, each.header)) === index)
      .sort((a, b) => b.header.at.localeCompare(a.header.at) || b.header.number - a.header.number);
    found = [];
    for (const each of newestFirst) {
      if (found.length >= most) break;
      const openable = each.header.locked === null || each.opener !== null;
      const locked = !openable;
      const proved = openable && !found.some(({ offer }) => offer.proved) && (await isWhole(each));
      if (openable && !proved && !found.some(({ offer }) => offer.proved)) continue;
      const { at, holding } = each.header;
      found.push({ ...each, offer: { at, holding, locked, proved } });
    }
  }

  async function inFolder(folder: string): Promise<Omit<Found, "offer">[]> {
    const listed: FoundBackup[] = await headersIn(folder).catch(() => []);
    return listed.flatMap((each) => {
      const { name, header } = each;
      if (header === null || forgotten(each)) return [];
      const known = lock !== null && header.locked?.scrypt.salt === lock.scrypt.salt;
      return [{ file: join(folder, name), header, opener: known && lock !== null ? { lock } : null }];
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

/** The same backup in two places. */
function same(a: BackupHeader, b: BackupHeader): boolean {
  return a.source === b.source && a.number === b.number;
}

async function isWhole({ file, opener }: Omit<Found, "offer">): Promise<boolean> {
  return unpackBackup(file, opener).then(
    () => true,
    () => false,
  );
}
