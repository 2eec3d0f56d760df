import { spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { build } from "vite";
import { contentSecurityPolicy } from "../../../electron/shell/scheme/headers.ts";
import config from "../../../electron.vite.config.ts";
import { environment, type Stage } from "../launch.ts";
import type { Tasks } from "./page.ts";
import { showTestPage } from "./shell.ts";

/** When a page is given up that says nothing: far more than any task takes on a slow machine. */
const limitMs = 600_000;

/**
 * Starts the built app and shows the page of this folder beside it, in a window of its own, on the app's scheme, under
 * the app's content policy and built as the app's own pages are; the page does its task and says what came of it. Nothing
 * of it is in the product. No driver is attached: one would keep the window from ever being hidden.
 */
export async function inWindow<Task extends keyof Tasks>(
  stage: Stage,
  page: string,
  task: Task,
): Promise<Tasks[Task]> {
  const folder = await mkdtemp(join(tmpdir(), "tapeline-metronome-"));
  try {
    const printed = await runApp(stage, { folder, page }, task);
    const result = await readFile(join(folder, "result.json"), "utf8").catch(() => null);
    if (result === null) throw new Error(`The page said nothing in ${limitMs} ms. It printed:\n${printed}`);
    return JSON.parse(result) as Tasks[Task];
  } finally {
    await rm(folder, { recursive: true, force: true, maxRetries: 5 });
  }
}

/** Builds the page of this folder as the app's own pages are. */
export async function buildPage(outDir: string): Promise<void> {
  const { renderer } = config;
  await build({
    ...renderer,
    configFile: false,
    logLevel: "warn",
    root: import.meta.dirname,
    build: {
      ...renderer?.build,
      outDir,
      emptyOutDir: true,
      rolldownOptions: {
        input: ["index.html", "listener.ts", "counter.ts"].map((name) => join(import.meta.dirname, name)),
        output: { entryFileNames: "[name].js" },
      },
    },
  });
}

/** Runs the app until the page has said what came of its task, and returns what was printed. */
async function runApp(
  stage: Stage,
  { folder, page }: Readonly<Record<"folder" | "page", string>>,
  task: string,
): Promise<string> {
  const start = join(folder, "shell.cjs");
  const settings = JSON.stringify({ folder, page, task, policy: contentSecurityPolicy });
  // The app's own modules are there from the next turn on.
  await writeFile(start, `process.nextTick(() => (${showTestPage})(require("electron"), ${settings}));\n`);
  const { runtime, display } = stage;
  const app = spawn(runtime.executablePath, [...runtime.args, ...display.args], {
    env: { ...environment(stage, join(folder, "data")), NODE_OPTIONS: `--require "${start}"` },
    stdio: ["ignore", "pipe", "pipe"],
  });
  let printed = "";
  for (const stream of [app.stdout, app.stderr]) {
    stream.on("data", (text) => {
      printed += text;
    });
  }
  const timer = setTimeout(() => app.kill("SIGKILL"), limitMs);
  await once(app, "exit");
  clearTimeout(timer);
  return printed;
}
