import { existsSync } from "node:fs";
import { rm } from "node:fs/promises";
import { dirname } from "node:path";
import type { BackupSettings } from "../domain/backups/records.ts";
import type { StoreLocation } from "../store/connection/connect.ts";
import { inFolderAside, makePrivateFolder, sweepAside } from "../store/connection/private.ts";
import type { Store } from "../store/connection/store.ts";
import { erasureById } from "../store/erasure/erase-log.ts";
import { filesSetAside } from "../store/keeping/set-aside.ts";
import { countEarlier, type EarlierBackups, makeAnew, type TakeOut } from "./anew.ts";
import { newLock } from "./cipher.ts";
import { type CheckedCopy, copyStore } from "./copy.ts";
import { dropUnfinished } from "./folder.ts";
import {
  type BackupPlace,
  backUpTo,
  backupPlaces,
  highestNumber,
  isThere,
  localMinute,
  makeSecond,
  ownBackups,
  type PlaceKind,
  type PlaceNews,
  placeNews,
  settingsBeside,
} from "./places.ts";
import { readSettings, withLock, writeSettings } from "./settings.ts";
import { whyNotMade } from "./trouble.ts";
import { type BackupWork, workHere } from "./work.ts";

/** The progress of the backup being made: pages of the store, then places. */
interface Running {
  readonly step: "copying" | PlaceKind;
  readonly done: number;
  readonly total: number;
}

/** Makes the backups of one desk and knows their places. Makes one backup at a time. */
export interface Keeper {
  /** Returns the location of the hall's own store. */
  location(): StoreLocation;
  places(): readonly BackupPlace[];
  news(kind: PlaceKind): PlaceNews;
  settings(): BackupSettings;
  running(): Running | null;
  /** Reads the backups in the places, and clears what a crash left: for a desk that has only just started. */
  look(): Promise<void>;
  /** Backs up to every reachable place. Never throws. */
  run(): Promise<void>;
  /** Backs up at once to the places that lack something: for closing. */
  runWhatLacks(): Promise<void>;
  /** Backs up to the places that lack something, if due: five minutes after a change, or when a stick came back. */
  runWhenDue(): Promise<void>;
  /** @throws the system's error when the folder can't be made. */
  chooseSecond(chosen: string | null): Promise<void>;
  choosePassphrase(passphrase: string | null): Promise<void>;
  /** Says what an erasure would do to the backups that can be reached, and to stores that were set aside. */
  beforeForgetting(): Promise<EarlierBackups & { readonly setAside: number; readonly away: boolean }>;
  /** Notes before an erasure that backups will hold somebody who is gone: a crash in between leaves none of them. */
  announce(erasureId: string): Promise<void>;
  /**
   * After an erasure: makes every earlier backup again without the person, and a new one; deletes the earlier ones, and
   * stores that were set aside. Returns how many were made again.
   */
  forgetEarlier(takeOut: TakeOut): Promise<number>;
}

export interface KeeperParts {
  /** The hall's own store; backups lie in `backups` beside it. */
  readonly location: StoreLocation;
  /** The hall's own store, while it is in use. */
  own(): Store | null;
  now(): Date;
  /** Returns the ms of the monotonic clock. */
  ms(): number;
  /** Returns the network's key, which goes into locked backups; null without one. */
  networkKey(): string | null;
  /** Who checks and packs; left out, the thread that the keeper is in. */
  readonly work?: BackupWork;
}

const everyMs = 5 * 60_000;
/** Ms until the retry of a failed first backup. */
const againMs = 60_000;
const nothing: PlaceNews = { last: null, trouble: null };

export function createKeeper(parts: KeeperParts): Keeper {
  const { file: _file, ...library } = parts.location;
  const { work = workHere } = parts;
  const folder = dirname(parts.location.file);
  const ownFolder = ownBackups(parts.location.file);
  const settingsFile = settingsBeside(parts.location.file);
  let settings = readSettings(settingsFile);
  const news = new Map<PlaceKind, PlaceNews>();
  const covered = new Map<PlaceKind, { store: Store; seq: number }>();
  const away = new Set<PlaceKind>();
  let running: Running | null = null;
  let queue: Promise<void> = Promise.resolve();
  let lastRun = parts.ms();

  function keep(next: BackupSettings): void {
    settings = next;
    writeSettings(settingsFile, settings);
  }
  /** Saves the source's own name beyond this run, so that its backups are tidied; a full disk stops no backup. */
  function keepSource(): void {
    if (existsSync(settingsFile)) return;
    try {
      keep(settings);
    } catch (error) {
      console.error("The settings of backups could not be kept yet:", error);
    }
  }
  const places = () => backupPlaces(ownFolder, settings);
  const lacking = (store: Store) =>
    places().filter((place) => {
      const there = covered.get(place.kind);
      return isThere(place) && (there?.store !== store || there.seq < store.seq());
    });

  /** A stick that has come back is backed up at once: we can't know what it lacks. */
  function noteWhoCameBack(): void {
    for (const place of places()) {
      if (!isThere(place)) away.add(place.kind);
      else if (away.delete(place.kind)) covered.delete(place.kind);
    }
  }

  /** What an erasure had begun when the program ended: who is gone from the store goes from its backups. */
  function finishForgetting(): void {
    const store = parts.own();
    const { forgetting } = settings;
    if (forgetting === null || store === null) return;
    const { erasureId, upTo } = forgetting;
    const isDone = erasureById(store.db, erasureId) !== undefined;
    const forgetUpTo = isDone ? Math.max(upTo, settings.forgetUpTo) : settings.forgetUpTo;
    keep({ ...settings, forgetUpTo, forgetting: null });
    if (isDone) covered.clear();
  }

  /** Runs work one after another: a second request waits for the first. */
  function inTurn(work: () => Promise<void>): Promise<void> {
    queue = queue.then(work).catch(tellTrouble);
    return queue;
  }

  /** Reports every failure, wherever it happened. */
  function tellTrouble(error: unknown): void {
    console.error("Backing up failed:", error);
    for (const { kind } of places()) {
      news.set(kind, { last: news.get(kind)?.last ?? null, trouble: whyNotMade(error) });
    }
  }

  async function backUp(asked: boolean): Promise<void> {
    const store = parts.own();
    if (store === null) return;
    const wanted = asked ? places().filter(isThere) : lacking(store);
    if (wanted.length === 0) return;
    lastRun = parts.ms();
    const seq = store.seq();
    try {
      await withCopy(store, async (copy) => {
        // A hall that has only just been set up has nothing to lose yet.
        const bare = copy.holding.days + copy.holding.athletes === 0;
        if (asked || !bare) await toPlaces(wanted, copy, { store, seq }, asked);
        else for (const { kind } of wanted) covered.set(kind, { store, seq });
      });
    } finally {
      running = null;
    }
  }

  /** Copies the store and uses the copy; if there can be none, that is in every place's news, with the reason. */
  async function withCopy(store: Store, use: (copy: CheckedCopy) => Promise<void>): Promise<void> {
    let isCopied = false;
    const told = (done: number, total: number) => {
      running = { step: "copying", done, total };
    };
    const inFolder = (folder: string) =>
      copyStore(store.db, { folder, library, check: work.check, told }, (copy) => {
        isCopied = true;
        return use(copy);
      });
    told(0, 1);
    try {
      makePrivateFolder(ownFolder);
      await inFolder(ownFolder);
    } catch (error) {
      if (isCopied) throw error;
      if (parts.own() !== store) return;
      await inFolderAside(parts.location.file, inFolder).catch((again) => {
        if (isCopied) throw again;
        tellTrouble(error);
      });
    }
  }

  async function toPlaces(
    wanted: readonly BackupPlace[],
    copy: CheckedCopy,
    from: { store: Store; seq: number },
    asked: boolean,
  ): Promise<void> {
    keepSource();
    const { source, forgetUpTo } = settings;
    const highest = Math.max(await highestNumber(places(), source), forgetUpTo);
    const now = parts.now();
    const made = {
      from: copy,
      number: highest + 1,
      source,
      at: now.toISOString(),
      clock: localMinute(now),
      forgetUpTo,
      networkKey: parts.networkKey(),
    };
    for (const [index, place] of wanted.entries()) {
      running = { step: place.kind, done: index, total: wanted.length };
      const there = await placeNews(place, source);
      const same = !asked && there.last?.sha256 === copy.sha256 && there.last.number > forgetUpTo;
      const told = same ? there : await backUpTo(place, made, work.pack);
      news.set(place.kind, told);
      if (told.trouble === null) covered.set(place.kind, from);
    }
  }

  return {
    location: () => parts.location,
    places,
    news: (kind) => news.get(kind) ?? nothing,
    settings: () => settings,
    running: () => running,
    look: () =>
      inTurn(async () => {
        await sweepAside(parts.location.file);
        await dropUnfinished(ownFolder);
        finishForgetting();
        for (const place of places()) news.set(place.kind, await placeNews(place, settings.source));
      }),
    run: () => inTurn(() => backUp(true)),
    runWhatLacks: () => inTurn(() => backUp(false)),
    async runWhenDue() {
      const store = parts.own();
      if (store === null || running !== null) return;
      noteWhoCameBack();
      const fresh = lacking(store).filter(({ kind }) => covered.get(kind)?.store !== store);
      const since = parts.ms() - lastRun;
      const soon = fresh.some(({ kind }) => news.get(kind)?.trouble == null || since >= againMs);
      if (soon || since >= everyMs) await inTurn(() => backUp(false));
    },
    async chooseSecond(chosen) {
      const second = chosen === null ? null : await makeSecond(chosen);
      keep({ ...settings, second });
      news.delete("second");
      covered.delete("second");
    },
    async choosePassphrase(passphrase) {
      keep(withLock(settings, passphrase === null ? null : await newLock(passphrase)));
      covered.delete("second");
    },
    async beforeForgetting() {
      const upTo = await highestNumber(places(), settings.source);
      const { source, forgetUpTo: after } = settings;
      return {
        ...(await countEarlier(places(), { source, after, upTo })),
        setAside: filesSetAside(folder).length,
        away: places().some((place) => !isThere(place)),
      };
    },
    async announce(erasureId) {
      const upTo = await highestNumber(places(), settings.source);
      keep({ ...settings, forgetting: { erasureId, upTo } });
    },
    async forgetEarlier(takeOut) {
      let made = 0;
      await inTurn(async () => {
        const { source, forgetUpTo: after } = settings;
        const upTo = Math.max(await highestNumber(places(), source), after);
        // From here on nobody goes back to one of them, whatever happens to the program.
        keep({ ...settings, forgetUpTo: upTo, forgetting: null });
        const told = (done: number, total: number) => {
          running = { step: "own", done, total };
        };
        made = await makeAnew(places(), { source, after, upTo }, parts.location, takeOut, told);
        // Each new backup deletes the earlier ones; where none can be written, the last one stays until one can.
        await backUp(true);
        for (const file of filesSetAside(folder)) await rm(file, { force: true });
      });
      return made;
    },
  };
}
