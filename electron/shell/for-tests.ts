import { app } from "electron";
import { type BlockedRequests, blockedRequests } from "./guard.ts";

/** What a test that drives the real app may read of its main process, because no window shows it. */
export interface ForTests {
  readonly blockedRequests: () => BlockedRequests;
}

declare global {
  /** There in development alone. */
  var tapelineForTests: ForTests | undefined;
}

/** Lets tests look in. The packaged app has nothing of it. */
export function setupForTests(): void {
  if (!app.isPackaged) globalThis.tapelineForTests = { blockedRequests };
}
