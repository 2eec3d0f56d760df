import { createRequire } from "node:module";
import { app } from "electron";
import { type BlockedRequests, blockedRequests } from "./scheme/guard.ts";

/** State of the main process that tests of the real app may read, because no window shows it. */
export interface ForTests {
  readonly blockedRequests: () => BlockedRequests;
}

declare global {
  /** Only there in development. */
  var tapelineForTests: ForTests | undefined;
}

/**
 * Gives tests access, and runs the script that TAPELINE_TEST_SCRIPT names before the first window: tests use it to stop
 * the computer's clocks. The packaged app has no such access, and runs no script.
 */
export function setupForTests(): void {
  if (app.isPackaged) return;
  globalThis.tapelineForTests = { blockedRequests };
  const script = process.env.TAPELINE_TEST_SCRIPT;
  if (script !== undefined && script !== "") createRequire(import.meta.url)(script);
}
