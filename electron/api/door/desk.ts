import type { Keeper } from "../../backups/keeper.ts";
import type { Language } from "../../domain/languages.ts";
import type { DeskLock } from "../../lock/desk-lock.ts";
import type { SheetKindName } from "../../sheets/headers.ts";
import type { Store, Topic } from "../../store/connection/store.ts";
import type { Rehearse } from "./rehearse.ts";

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
  readonly news: Announcements;
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
export interface Announcements {
  /** All that a client missed after `lastId`; asks to read everything where that is not known any more. */
  since(lastId: string | null): Announcement[];
  listen(listener: (announcement: Announcement) => void): () => void;
}
