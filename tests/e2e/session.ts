import { type ElectronApplication, type Page, test } from "@playwright/test";
import type { Bridge } from "../../electron/shell/bridge/bridge-types.ts";
import type { ForTests } from "../../electron/shell/for-tests.ts";
import { type HeldClock, type SessionClock, sessionClock } from "./held-clock.ts";
import { closeApp, environment, type Launched, launchApp, pageOf, type Stage } from "./launch.ts";

/** A running app with a data folder of its own. */
export interface Tapeline {
  /** The Electron that runs now; another one after `restart`. */
  readonly app: ElectronApplication;
  /** The desk's page that is shown now. */
  readonly desk: Page;
  /** The data folder; gone after the test. */
  readonly folder: string;
  /** Calls the shell as the desk's page does; `work` runs in the page and sees nothing around it here. */
  bridge<Result>(work: (bridge: Bridge) => Promise<Result>): Promise<Result>;
  /** Opens the hall's board as the desk's page does, and returns its page. */
  openBoard(): Promise<Page>;
  /** Closes the app, lets `between` change its folder, and starts it again. */
  restart(between?: () => Promise<void>): Promise<void>;
  /** The machine's clocks; they run by themselves until a test holds them. */
  readonly clock: HeldClock;
  /** Requests to anything outside the app since it started, all of them refused. */
  blocked(): Promise<ReturnType<ForTests["blockedRequests"]>>;
  /** The environment for another launch on the same folder. */
  environment(): Record<string, string>;
}

export interface Session {
  readonly tapeline: Tapeline;
  /** Closes the app; keeps trace, pictures and what was printed of a test that failed. */
  end(failed: boolean): Promise<void>;
}

/** Starts the app on `folder` and waits until its desk shows its data. */
export async function startSession(stage: Stage, folder: string): Promise<Session> {
  const clock = sessionClock(() => current.launched.app);
  let current = await start(stage, folder, clock);
  const tapeline: Tapeline = {
    folder,
    clock,
    get app() {
      return current.launched.app;
    },
    get desk() {
      return current.desk;
    },
    bridge: (work) => callBridge(current.desk, work),
    async openBoard() {
      await callBridge(current.desk, (bridge) => bridge.openBoard());
      return pageOf(current.launched.app, "board");
    },
    async restart(between) {
      await finish(current.launched, false);
      await between?.();
      current = await start(stage, folder, clock);
    },
    async blocked() {
      const blocked = await current.launched.app.evaluate(() =>
        globalThis.tapelineForTests?.blockedRequests(),
      );
      if (blocked === undefined) throw new Error("The app does not let tests look in: is it packaged?");
      return blocked;
    },
    environment: () => environment(stage, folder),
  };
  async function end(failed: boolean): Promise<void> {
    await finish(current.launched, failed);
    await clock.end();
  }
  return { tapeline, end };
}

async function callBridge<Result>(desk: Page, work: (bridge: Bridge) => Promise<Result>): Promise<Result> {
  const bridge = await desk.evaluateHandle(() => (window as unknown as { bridge: Bridge }).bridge);
  // The page runs the text of `work`, so the types it promises are not the runner's to check.
  return (await bridge.evaluate(work as (bridge: Bridge) => unknown)) as Result;
}

async function start(
  stage: Stage,
  folder: string,
  clock: SessionClock,
): Promise<{ launched: Launched; desk: Page }> {
  const launched = await launchApp(stage, folder, await clock.environment());
  return { launched, desk: await shown(launched) };
}

async function shown(launched: Launched): Promise<Page> {
  try {
    if (isTraced()) await launched.app.context().tracing.start({ snapshots: true });
    return await pageOf(launched.app, "desk");
  } catch (error) {
    await finish(launched, true);
    throw error;
  }
}

async function finish(launched: Launched, failed: boolean): Promise<void> {
  try {
    if (failed) await keepEvidence(launched);
  } finally {
    await closeApp(launched, failed);
  }
}

/** What a failed test leaves to look at; what can't be had says why, and hides neither the failure nor the rest. */
export async function keepEvidence({ app, printed }: Launched): Promise<void> {
  const info = test.info();
  await info.attach("printed", { body: printed() });
  await attached("pictures", async () => {
    for (const { host, picture } of await picturesOf(app)) {
      await info.attach(host, { body: Buffer.from(picture, "base64"), contentType: "image/png" });
    }
  });
  if (!isTraced()) return;
  await attached("trace", async () => {
    const path = info.outputPath("trace.zip");
    await app.context().tracing.stop({ path });
    await info.attach("trace", { path });
  });
}

/** A trace costs a tenth of the whole suite, so only a second try is traced; the pictures are of every failure. */
function isTraced(): boolean {
  return test.info().retry > 0;
}

async function attached(what: string, attach: () => Promise<void>): Promise<void> {
  try {
    await attach();
  } catch (error) {
    await test.info().attach(`no ${what}`, { body: String(error) });
  }
}

/** Taken by the shell: the runner gives a page up for good once it has crashed, its window goes on. */
function picturesOf(app: ElectronApplication): Promise<{ host: string; picture: string }[]> {
  return app.evaluate(({ BrowserWindow }) => {
    const alive = BrowserWindow.getAllWindows().filter(({ webContents }) => !webContents.isCrashed());
    return Promise.all(
      alive.map(async ({ webContents }) => ({
        host: new URL(webContents.getURL()).host || "blank",
        picture: (await webContents.capturePage()).toPNG().toString("base64"),
      })),
    );
  });
}
