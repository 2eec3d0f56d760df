/** The thread in which a store is looked at: before it is opened, while a window says so, and behind the entries afterwards. */
import { parentPort, workerData } from "node:worker_threads";
import type { CheckStep } from "../domain/backups/check-time.ts";
import type { StoreLocation } from "../store/connection/connect.ts";
import { type Examined, examine, lookAgain } from "../store/connection/examine.ts";
import { type RefusedWith, StoreRefused } from "../store/connection/refused.ts";
import { goBehindEntries } from "./behind-entries.ts";
import { type ErrorWith, errorWith } from "./thread.ts";

/** What the thread does. */
export interface StoreTask {
  readonly location: StoreLocation;
  readonly what: "examine" | "look again";
}

/** What it says: how far it is, and in the end what it found, why the store is refused, or what failed. */
export type FromStoreThread =
  | { readonly at: CheckStep }
  | { readonly examined: Examined }
  | { readonly damage: string | null }
  | { readonly refused: RefusedWith }
  | { readonly failed: ErrorWith };

const { location, what } = workerData as StoreTask;
try {
  if (what === "examine")
    say({ examined: examine(location, { trustSeal: true, told: (at) => say({ at }) }) });
  else {
    goBehindEntries();
    say({ damage: lookAgain(location) });
  }
} catch (error) {
  if (error instanceof StoreRefused) say({ refused: error.with() });
  else say({ failed: errorWith(error) });
}

function say(word: FromStoreThread): void {
  parentPort?.postMessage(word);
}
