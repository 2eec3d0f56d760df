import type { Keeper } from "../../backups/keeper.ts";
import type { Language } from "../../domain/languages.ts";
import type { TestCode } from "../../domain/tests/registry.ts";
import type { DeskLock } from "../../lock/desk-lock.ts";
import type { Network } from "../../network/network.ts";
import type { SheetKindName } from "../../sheets/headers.ts";
import type { Store, Topic } from "../../store/connection/store.ts";
import type { Calculator } from "./calculate.ts";
import type { Rehearse } from "./rehearse.ts";

/** The store in use: the hall's own, or the invented one of the demo. They never mix. */
export type StoreKind = "own" | "demo";

/** The environment of all procedures: one store at a time, the wall clock, randomness, and the change announcements. */
export interface Desk {
  readonly store: Store;
  readonly kind: StoreKind;
  /** True for a rehearsal on a store that is thrown away: its data must not be shared. */
  readonly rehearsal: boolean;
  /** Rehearses a day on a store of its own; null for a desk that can't (a rehearsal itself, a test). */
  readonly rehearse: Rehearse | null;
  /**
   * Switches to the other store, and windows read everything again. If it can't be opened, the current one stays;
   * switching to the current one changes nothing.
   */
  use(kind: StoreKind): void;
  /** Returns the invented sheets that fill the demo. */
  demoSheets(): DemoSheets;
  /** True while the big screen is blanked; never stored, so that a restart shows it again. */
  readonly boardHidden: boolean;
  hideBoard(hidden: boolean): void;
  /** The language of the desk, its big screen and its papers. */
  readonly language: Language;
  chooseLanguage(language: Language): void;
  /** Returns wall time: a label on stored data, never a measure of duration. */
  now(): Date;
  /** Returns the computer's monotonic clock, for durations: it survives a restart of the program and never jumps. */
  monotonic(): { readonly ms: number; readonly boot: string };
  /** Returns a number in [0, 1), uniform; unpredictable in the real program, seeded in rehearsals that must repeat. */
  random(): number;
  readonly news: Announcements;
  /** Begins long calculations in threads of their own; null for a desk that has none. */
  readonly calculator: Calculator | null;
  /** Announces that something has another answer which no store has written. */
  tell(topic: "plan" | "forecast"): void;
  /** The backups of the hall's own store; null for a desk without any (a rehearsal, a test). */
  readonly backups: Keeper | null;
  /** The door to the hall's network; null for a desk that no device can join (a rehearsal, a test). */
  readonly network: Network | null;
  /** The current user of the desk's window. It belongs to the computer, whichever store is in use. */
  readonly lock: DeskLock;
  /**
   * Closes the hall's own store, does `work` on its file, and opens it again, even if `work` fails. Windows read
   * everything again. Errors of `work` are rethrown.
   */
  replaceOwn<Result>(work: () => Result): Result;
  close(): void;
}

/** The sheets of the demo as file bytes. */
export type DemoSheets = Readonly<Record<SheetKindName, Uint8Array>>;

/**
 * One announcement: an id to resume after, and the topics to read again ("all" for everything). `tests`: no other test's
 * station looks different; left out: any may.
 */
export interface Announcement {
  readonly id: string;
  readonly tests?: readonly TestCode[];
  readonly topics: readonly (Topic | "board" | "forecast" | "language" | "lock" | "network" | "all")[];
}

/** The newest announcements, for clients that were away for a moment. */
export interface Announcements {
  /** Returns all announcements after `lastId`; a request to read everything where that id is no longer known. */
  since(lastId: string | null): Announcement[];
  listen(listener: (announcement: Announcement) => void): () => void;
}
