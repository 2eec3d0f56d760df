import { createRequire } from "node:module";
import { app } from "electron";
import { type BlockedRequests, blockedRequests } from "./scheme/guard.ts";

/** What a test that drives the real app may read of its main process, because no window shows it. */
export interface ForTests {
  readonly blockedRequests: () => BlockedRequests;
}

declare global {
  /** There in development alone. */
  var tapelineForTests: ForTests | undefined;
}

/**
 * Lets tests look in, and runs the script that TAPELINE_TEST_SCRIPT names before any window is there: tests hold the
 * machine's clocks by it. The packaged app has nothing of it, and takes no script.
 */
export function setupForTests(): void {
  if (app.isPackaged) return;
  globalThis.tapelineForTests = { blockedRequests };
  const script = process.env.TAPELINE_TEST_SCRIPT;
  if (script !== undefined && script !== "") createRequire(import.meta.url)(script);
}
