import type { ElectronApplication, Page, TestInfo } from "@playwright/test";
import type { Bridge } from "../../electron/shell/bridge-types.ts";
import type { ForTests } from "../../electron/shell/for-tests.ts";
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
  /** Requests to anything outside the app since it started, all of them refused. */
  blocked(): Promise<ReturnType<ForTests["blockedRequests"]>>;
  /** The environment for another launch on the same folder. */
  environment(): Record<string, string>;
}

export interface Session {
  readonly tapeline: Tapeline;
  /** Closes the app; keeps trace, pictures and what was printed when the test failed. */
  end(): Promise<void>;
}

/** Starts the app on `folder` and waits until its desk shows its data. */
export async function startSession(stage: Stage, folder: string, info: TestInfo): Promise<Session> {
  let current = await start(stage, folder, info);
  const tapeline: Tapeline = {
    folder,
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
      await finish(current.launched, info, false);
      await between?.();
      current = await start(stage, folder, info);
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
  return { tapeline, end: () => finish(current.launched, info, info.status !== info.expectedStatus) };
}

async function callBridge<Result>(desk: Page, work: (bridge: Bridge) => Promise<Result>): Promise<Result> {
  const bridge = await desk.evaluateHandle(() => (window as unknown as { bridge: Bridge }).bridge);
  // The page runs the text of `work`, so the types it promises are not the runner's to check.
  return (await bridge.evaluate(work as (bridge: Bridge) => unknown)) as Result;
}

async function start(
  stage: Stage,
  folder: string,
  info: TestInfo,
): Promise<{ launched: Launched; desk: Page }> {
  const launched = await launchApp(stage, folder);
  try {
    await launched.app.context().tracing.start({ snapshots: true });
    return { launched, desk: await pageOf(launched.app, "desk") };
  } catch (error) {
    await finish(launched, info, true);
    throw error;
  }
}

async function finish(launched: Launched, info: TestInfo, failed: boolean): Promise<void> {
  try {
    if (failed) await keepEvidence(launched, info);
  } finally {
    await closeApp(launched);
  }
}

async function keepEvidence({ app, printed }: Launched, info: TestInfo): Promise<void> {
  await info.attach("printed", { body: printed() });
  for (const page of app.windows()) {
    const name = new URL(page.url()).host || "blank";
    await info.attach(name, { body: await page.screenshot({ timeout: 5_000 }), contentType: "image/png" });
  }
  const path = info.outputPath("trace.zip");
  await app.context().tracing.stop({ path });
  await info.attach("trace", { path });
}
