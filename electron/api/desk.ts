import type { Language } from "../domain/languages.ts";
import type { StoreLocation } from "../store/connect.ts";
import type { Change, Store, Topic } from "../store/store.ts";
import { createKeeper, type Keeper } from "./backups/keeper.ts";
import { createLock, type DeskLock } from "./lock/desk-lock.ts";
import { keepInMemory, type LockKeep } from "./lock/kept.ts";
import type { Rehearse } from "./rehearsal/rehearse.ts";
import type { SheetKindName } from "./sheets/headers.ts";

/** Which store is in use: the hall's own, or the invented one of the demonstration. They never mix. */
export type StoreKind = "own" | "demo";

/** What the procedures work with: one store at a time, the wall clock, chance, and the news of changes. */
export interface Desk {
  readonly store: Store;
  readonly kind: StoreKind;
  /** True where a day is only tried out, on a store that is thrown away: what it writes is not for handing on. */
  readonly rehearsal: boolean;
  /** Tries a day out on a store of its own; null for a desk that has no room for one (a rehearsal itself, a test). */
  readonly rehearse: Rehearse | null;
  /**
   * Puts the other store to use; windows are told to read everything again. The one in use stays in use when the other
   * can't be opened, and using it again changes nothing.
   */
  use(kind: StoreKind): void;
  /** The invented sheets that fill the demonstration. */
  demoSheets(): DemoSheets;
  /** Whether the hall's board is blank just now; never kept, so that a restart shows it again. */
  readonly boardHidden: boolean;
  hideBoard(hidden: boolean): void;
  /** What the desk, its board and its papers speak. */
  readonly language: Language;
  chooseLanguage(language: Language): void;
  /** Wall time: a label on what is stored, never a measure of duration. */
  now(): Date;
  /** The machine's monotonic clock, for durations: goes on through a restart of the program, never jumps. */
  monotonic(): { readonly ms: number; readonly boot: string };
  /** Uniform in [0, 1), unpredictable in the real program, seeded in rehearsals that must repeat. */
  random(): number;
  readonly news: News;
  /** The backups of the hall's own store; null for a desk without any (a rehearsal, a test). */
  readonly backups: Keeper | null;
  /** Who sits at the desk's window. It is of the machine, whichever store is in use. */
  readonly lock: DeskLock;
  /**
   * Closes the hall's own store, does `work` on its file, and opens it again, whether that came to anything or not;
   * windows are told to read everything again. What `work` throws is thrown.
   */
  replaceOwn<Result>(work: () => Result): Result;
  close(): void;
}

/** The sheets of the demonstration, as files are: bytes. */
export type DemoSheets = Readonly<Record<SheetKindName, Uint8Array>>;

/** One announcement: an id that a client can resume after, and the topics to read again ("all" for everything). */
export interface Announcement {
  readonly id: string;
  readonly topics: readonly (Topic | "board" | "language" | "lock" | "all")[];
}

/** The newest announcements, for clients that were away a moment. */
export interface News {
  /** All that a client missed after `lastId`; asks to read everything where that is not known any more. */
  since(lastId: string | null): Announcement[];
  listen(listener: (announcement: Announcement) => void): () => void;
}

export interface DeskParts {
  /** Opens a store that is not in use. The demonstration's store is made anew each time it is opened. */
  open(kind: StoreKind): Store;
  now(): Date;
  monotonic(): { readonly ms: number; readonly boot: string };
  random(): number;
  demoSheets(): DemoSheets;
  readonly rehearsal?: boolean;
  /** Where the language is kept; a desk without it speaks English. */
  readonly language?: KeptLanguage;
  readonly rehearse?: Rehearse;
  /** Where the hall's own store lies, for a desk that makes backups of it. */
  readonly backups?: StoreLocation;
  /** Where the lock is kept; without it no longer than the desk lives. */
  readonly lock?: LockKeep;
  /** scrypt's N for a new PIN; left out, as much as a third of a second allows. */
  readonly lockCost?: number;
}

/** The language of this computer's desk, as it was chosen or as its system speaks. */
export interface KeptLanguage {
  now(): Language;
  choose(language: Language): void;
}

const remembered = 1000;

export function createDesk(parts: DeskParts): Desk {
  // Announcement ids of an earlier run mean nothing to this one.
  const run = Math.floor(parts.random() * 2 ** 48).toString(36);
  const listeners = new Set<(announcement: Announcement) => void>();
  const recent: Announcement[] = [];
  let count = 0;

  function announce(topics: Announcement["topics"]): void {
    count += 1;
    const announcement = { id: `${run}.${count}`, topics };
    recent.push(announcement);
    if (recent.length > remembered) recent.shift();
    for (const listener of listeners) listener(announcement);
  }

  function since(lastId: string | null): Announcement[] {
    const everything: Announcement = { id: `${run}.${count}`, topics: ["all"] };
    const [lastRun, lastCount] = lastId?.split(".") ?? [];
    const seen = Number(lastCount);
    if (lastRun !== run || !Number.isSafeInteger(seen) || seen > count) return [everything];
    if (seen < count - recent.length) return [everything];
    return recent.slice(recent.length - (count - seen));
  }

  function take(kind: StoreKind): { kind: StoreKind; store: Store; stop: () => void } {
    const store = parts.open(kind);
    const stop = store.listen((change: Change) => announce(change.topics));
    return { kind, store, stop };
  }

  let current = take("own");
  const keeper =
    parts.backups === undefined
      ? null
      : createKeeper({
          location: parts.backups,
          own: () => (current.kind === "own" ? current.store : null),
          now: parts.now,
          ms: () => parts.monotonic().ms,
        });
  const lock = createLock({
    keep: parts.lock ?? keepInMemory(),
    now: parts.now,
    monotonic: parts.monotonic,
    changed: () => announce(["lock"]),
    ...(parts.lockCost !== undefined && { cost: parts.lockCost }),
  });
  let boardHidden = false;
  return {
    get store() {
      return current.store;
    },
    get kind() {
      return current.kind;
    },
    rehearsal: parts.rehearsal ?? false,
    lock,
    rehearse: parts.rehearse ?? null,
    use(kind) {
      if (kind === current.kind) return;
      const before = current;
      // Opened first: when that fails, the one before is still there to work with.
      current = take(kind);
      before.stop();
      before.store.close();
      announce(["all"]);
    },
    get boardHidden() {
      return boardHidden;
    },
    hideBoard(hidden) {
      if (hidden === boardHidden) return;
      boardHidden = hidden;
      announce(["board"]);
    },
    backups: keeper,
    replaceOwn(work) {
      if (current.kind !== "own") throw new Error("the hall's own store is not in use");
      current.stop();
      current.store.close();
      try {
        return work();
      } finally {
        current = take("own");
        announce(["all"]);
      }
    },
    get language() {
      return parts.language?.now() ?? "en";
    },
    chooseLanguage(language) {
      parts.language?.choose(language);
      announce(["language"]);
    },
    now: parts.now,
    monotonic: parts.monotonic,
    random: parts.random,
    demoSheets: parts.demoSheets,
    news: {
      since,
      listen(listener) {
        listeners.add(listener);
        return () => listeners.delete(listener);
      },
    },
    close() {
      current.stop();
      current.store.close();
    },
  };
}
