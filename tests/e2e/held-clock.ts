import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { ElectronApplication } from "@playwright/test";
import { type HeldAt, holdInMain } from "./held-in-main.ts";
import { holdInPage } from "./held-in-page.ts";

/**
 * The machine's clocks in the test's hand: they stand still until the test lets time pass, in the main process and in
 * every page alike, through a crash and a restart; what pages put off comes when so much time has passed. However slow the
 * machine is, a key comes down exactly when it should, and nothing that takes its time comes too early or too late.
 */
export interface HeldClock {
  /** Stops the clocks where they are; once a test. */
  hold(): Promise<void>;
  /** So many whole ms later. */
  pass(ms: number): Promise<void>;
  /** Ms since the clocks were stopped. */
  now(): number;
  isHeld(): boolean;
}

/** The clocks of one session, over all the programs that it starts. */
export interface SessionClock extends HeldClock {
  /** The environment in which a program begins with the clocks as they stand. */
  environment(): Promise<Record<string, string>>;
  /** Leaves nothing behind. */
  end(): Promise<void>;
}

interface Held {
  at: HeldAt;
  /** Where the scripts lie that programs and pages begin with. */
  readonly folder: string;
}

/** @param program the Electron that runs now */
export function sessionClock(program: () => ElectronApplication): SessionClock {
  let held: Held | null = null;
  let passed = 0;
  const holding = (folder: string, at: HeldAt | null) => ({
    ...{ at, inPage: String(holdInPage) },
    beginning: join(folder, "page.cjs"),
  });
  return {
    async hold() {
      if (held !== null) throw new Error("The clocks stand still already.");
      const folder = await mkdtemp(join(tmpdir(), "tapeline-clock-"));
      held = { folder, at: await program().evaluate(holdInMain, holding(folder, null)) };
    },
    async pass(ms) {
      if (held === null) throw new Error("The clocks run by themselves: hold them first.");
      passed += ms;
      held.at = { wall: held.at.wall + ms, monotonic: held.at.monotonic + ms };
      await program().evaluate((_electron, by) => globalThis.heldMain?.pass(by), ms);
    },
    now: () => passed,
    isHeld: () => held !== null,
    async environment() {
      if (held === null) return {};
      const script = join(held.folder, "main.cjs");
      const told = JSON.stringify(holding(held.folder, held.at));
      await writeFile(script, `void (${holdInMain})(require("electron"), ${told});\n`);
      return { TAPELINE_TEST_SCRIPT: script };
    },
    async end() {
      if (held !== null) await rm(held.folder, { recursive: true, force: true });
    },
  };
}
