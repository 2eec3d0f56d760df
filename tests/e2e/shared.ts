import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "@playwright/test";
import { test as base } from "./fixture.ts";
import { showAsItIs } from "./in-sight.ts";
import type { Stage } from "./launch.ts";
import { callDoor } from "./page.ts";
import { type Session, startSession, type Tapeline } from "./session.ts";

/** An app that goes on from one test of a file to the next. */
interface Shared {
  /** The app for the tests of a file: the one that runs, or another one where that is another file's. */
  of(file: string): Promise<Tapeline>;
  /** Ends the app; keeps what a test that failed leaves to look at. */
  end(failed: boolean): Promise<void>;
}

/**
 * As `fixture.ts`, for tests that ask different things of the demonstration or of an app without a day: those of a file
 * share one app, which is brought back to its first screen after each. One that failed, held the clocks, or has the tag
 * `@last` since it leaves something behind (a day, a display, a guard taken away), shares no more.
 */
export const test = base.extend<object, { shared: Shared }>({
  shared: [
    async ({ stage }, use) => {
      const shared = sharedApp(stage);
      await use(shared);
      await shared.end(false);
    },
    { scope: "worker", timeout: 600_000 },
  ],
  tapeline: async ({ shared }, use, info) => {
    const tapeline = await shared.of(info.file);
    await use(tapeline);
    const failed = info.status !== info.expectedStatus;
    const isLast = failed || tapeline.clock.isHeld() || info.tags.includes("@last");
    if (isLast) await shared.end(failed);
    else await toFirstScreen(tapeline);
  },
});

/** A day of the hall's own that is open: the first test that asks makes it, and those after it look at the same one. */
export async function openSharedDay(desk: Page): Promise<void> {
  const { day } = await desk.evaluate(async () => {
    const response = await fetch("/trpc/day.current");
    return (await response.json()).result.data as { day: unknown };
  });
  if (day !== null) return;
  await callDoor(desk, "day.create", { sure: true, date: "2026-11-14", title: "Autumn testing day" });
  await callDoor(desk, "day.open", { sure: true });
}

function sharedApp(stage: Stage): Shared {
  let running: { readonly session: Session; readonly file: string; readonly folder: string } | null = null;
  async function end(failed: boolean): Promise<void> {
    if (running === null) return;
    const { session, folder } = running;
    running = null;
    await session.end(failed);
    await rm(folder, { recursive: true, force: true, maxRetries: 5 });
  }
  return {
    async of(file) {
      if (running?.file === file) return running.session.tapeline;
      await end(false);
      const folder = await mkdtemp(join(tmpdir(), "tapeline-e2e-"));
      running = { session: await startSession(stage, folder), file, folder };
      return running.session.tapeline;
    },
    end,
  };
}

/** No board, no demonstration, and a page that begins anew and remembers nothing. */
async function toFirstScreen({ desk, bridge }: Tapeline): Promise<void> {
  await bridge((shell) => shell.closeBoard());
  await callDoor(desk, "day.leaveDemo");
  await desk.evaluate(() => {
    for (const kept of [localStorage, sessionStorage]) kept.clear();
    location.hash = "";
  });
  await desk.emulateMedia({ reducedMotion: null });
  await showAsItIs(desk);
  await desk.reload();
  await desk.waitForFunction(() => document.documentElement.dataset.ready === "true");
}
