import { createKeeper } from "../backups/keeper.ts";
import type { BackupWork } from "../backups/work.ts";
import type { Language } from "../domain/languages.ts";
import { createLock } from "../lock/desk-lock.ts";
import { keepInMemory, type LockKeep } from "../lock/kept.ts";
import type { NetworkKeep } from "../network/kept.ts";
import { createNetwork, type NetworkParts } from "../network/network.ts";
import type { StoreLocation } from "../store/connection/connect.ts";
import type { Commit, Store } from "../store/connection/store.ts";
import type { Calculator } from "./door/calculate.ts";
import { isoDate } from "./door/calendar.ts";
import type { Announcement, DemoSheets, Desk, StoreKind } from "./door/desk.ts";
import type { Rehearse } from "./door/rehearse.ts";

export interface DeskParts {
  /** Opens a store that is not in use. The demo's store is new each time. */
  open(kind: StoreKind): Store;
  now(): Date;
  monotonic(): { readonly ms: number; readonly boot: string };
  random(): number;
  demoSheets(): DemoSheets;
  readonly rehearsal?: boolean;
  /** The stored language; a desk without it uses English. */
  readonly language?: KeptLanguage;
  readonly rehearse?: Rehearse;
  /** Threads for long calculations, closed with the desk. */
  readonly calculator?: Calculator;
  /** The location of the hall's own store, for a desk that backs it up. */
  readonly backups?: StoreLocation;
  /** Who checks and packs its backups; left out, the desk's own thread. */
  readonly backupWork?: BackupWork;
  /** The stored lock; without it the lock lives only as long as the desk. */
  readonly lock?: LockKeep;
  /** The stored key and switch of the network, for a desk to which devices may join. */
  readonly network?: NetworkKeep;
  /** How many connections a network's server holds and how long it waits; left out, the usual. */
  readonly networkBounds?: Pick<NetworkParts, "limits" | "patience">;
  /** scrypt's N for a new PIN; left out, the largest that takes under a third of a second. */
  readonly lockCost?: number;
}

/** The language of this computer's desk: the chosen one, or its system's. */
export interface KeptLanguage {
  now(): Language;
  choose(language: Language): void;
}

const remembered = 1000;

export function createDesk(parts: DeskParts): Desk {
  // Announcement ids of an earlier run mean nothing in this one.
  const run = Math.floor(parts.random() * 2 ** 48).toString(36);
  const listeners = new Set<(announcement: Announcement) => void>();
  const recent: Announcement[] = [];
  let count = 0;

  function announce(topics: Announcement["topics"], tests?: Announcement["tests"]): void {
    count += 1;
    const announcement = { id: `${run}.${count}`, topics, ...(tests !== undefined && { tests }) };
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
    const stop = store.listen((change: Commit) => announce(change.topics, change.tests));
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
          networkKey: () => parts.network?.key.read() ?? null,
          ...(parts.backupWork !== undefined && { work: parts.backupWork }),
        });
  const lock = createLock({
    keep: parts.lock ?? keepInMemory(),
    now: parts.now,
    monotonic: parts.monotonic,
    changed: () => announce(["lock"]),
    ...(parts.lockCost !== undefined && { cost: parts.lockCost }),
  });
  const network =
    parts.network === undefined
      ? null
      : createNetwork({
          keep: parts.network,
          store: () => current.store,
          kind: () => current.kind,
          now: parts.now,
          today: () => isoDate(parts.now()),
          ms: () => parts.monotonic().ms,
          changed: () => announce(["network"]),
          ...parts.networkBounds,
        });
  listeners.add(({ topics }) => {
    if (topics.includes("day") || topics.includes("all")) network?.lookAtDay();
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
    calculator: parts.calculator ?? null,
    tell: (topic) => announce([topic]),
    use(kind) {
      if (kind === current.kind) return;
      const before = current;
      // Opened first: if that fails, the current one is still in use.
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
    network,
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
      parts.calculator?.close();
      void network?.stop();
      current.stop();
      current.store.close();
    },
  };
}
