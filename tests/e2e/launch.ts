import type { ChildProcess } from "node:child_process";
import { existsSync } from "node:fs";
import { join } from "node:path";
import { _electron, type ElectronApplication, type Page } from "@playwright/test";
import { type Display, ensureDisplay } from "../../electron/runtime/display.ts";
import type { ElectronRuntime } from "../../electron/runtime/find.ts";
import { projectFolder } from "../../electron/runtime/host.ts";
import { prepareRuntime } from "../../electron/runtime/prepare.ts";

/** When nothing is waited for any longer: far more than any of it takes on a slow machine that does other things too. */
const WINDOW_LIMIT_MS = 600_000;
const CLOSING_LIMIT_MS = 240_000;

/** What every launch of a worker shares: the runtime and a display to show windows on. */
export interface Stage {
  readonly runtime: ElectronRuntime;
  readonly display: Display;
}

/** An app that runs, and what its main process has printed so far. */
export interface Launched {
  readonly app: ElectronApplication;
  /** Its main process; the runner forgets it with an app that has ended. */
  readonly process: ChildProcess;
  readonly printed: () => string;
}

/** Finds or obtains everything that a launch needs. Throws a sentence that says what is missing. */
export async function prepareStage(): Promise<Stage> {
  if (!existsSync(join(projectFolder, "out", "main", "main.js"))) {
    throw new Error("The app is not built. Run npm run build first.");
  }
  const runtime = await prepareRuntime(console.log);
  return { runtime, display: await ensureDisplay(console.log) };
}

/** Systems tell their language by it, and a desk speaks it until somebody chooses. */
export const english = { LANGUAGE: "en", LANG: "en_US.UTF-8" };

/** What the app finds in its environment when its data lies in `folder`. */
export function environment({ runtime, display }: Stage, folder: string): Record<string, string> {
  const own = Object.entries(process.env).filter(
    (entry): entry is [string, string] => entry[1] !== undefined,
  );
  return { ...Object.fromEntries(own), ...english, ...runtime.env, ...display.env, TAPELINE_DATA: folder };
}

/** Starts the built app with its data in `folder`, and with `env` beside what every launch finds. */
export async function launchApp(
  stage: Stage,
  folder: string,
  env: Record<string, string> = {},
): Promise<Launched> {
  const { executablePath, args } = stage.runtime;
  const app = await _electron.launch({
    executablePath,
    // As `npm start` does: on a display that nobody sees, Chromium tries a graphics card in vain, twice at each start.
    args: [...args, ...stage.display.args],
    env: { ...environment(stage, folder), ...env },
  });
  // The runner gives presses 30 s, within which a loaded machine may draw no frame.
  app.context().setDefaultTimeout(120_000);
  const process = app.process();
  let output = "";
  for (const stream of [process.stdout, process.stderr]) {
    stream?.on("data", (text) => {
      output += text;
    });
  }
  return { app, process, printed: () => output };
}

/** The window of a host, by its address and never by the order in which windows came, once it shows its data. */
export async function pageOf(app: ElectronApplication, host: "desk" | "board" | "device"): Promise<Page> {
  const shown = (page: Page) => page.url().startsWith(`app://${host}/`);
  const page = app.windows().find(shown) ?? (await waitForPage(app, shown));
  await page.waitForFunction(() => document.documentElement.dataset.ready === "true");
  return page;
}

async function waitForPage(app: ElectronApplication, shown: (page: Page) => boolean): Promise<Page> {
  for (;;) {
    const page = await app.waitForEvent("window", { timeout: WINDOW_LIMIT_MS }).catch((cause: unknown) => {
      throw new Error("The app shows no such window. If it fails to start, npm start says why.", { cause });
    });
    await page.waitForURL("app://**");
    if (shown(page)) return page;
  }
}

/**
 * Closes the app as its user would; ends the process when it does not close, and fails then.
 * @param asMachine closes it as a machine that goes down does: a desk that is shut lets nobody else close it.
 */
export async function closeApp({ app, process, printed }: Launched, asMachine = false): Promise<void> {
  if (process.exitCode !== null || process.signalCode !== null) return;
  let overdue = false;
  const timer = setTimeout(() => {
    overdue = true;
    process.kill("SIGKILL");
  }, CLOSING_LIMIT_MS);
  // No answer comes from an app that has ended by then, or that hangs: both are seen below.
  if (asMachine)
    await Promise.allSettled([app.evaluate(({ powerMonitor }) => powerMonitor.emit("shutdown"))]);
  await app.close();
  clearTimeout(timer);
  if (overdue) throw new Error(`The app did not close. It printed:\n${printed()}`);
}
