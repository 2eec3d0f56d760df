/**
 * `npm start`: builds what has changed, finds a runtime, ensures libraries and a display, runs the app and exits with
 * its code. Arguments are passed on to the app.
 */
import { spawn } from "node:child_process";
import { once } from "node:events";
import { constants } from "node:os";
import { ensureBuild } from "./build.ts";
import { ensureDisplay } from "./display.ts";
import type { ElectronRuntime } from "./find.ts";
import { prepareRuntime } from "./prepare.ts";
import { ensureSandbox } from "./sandbox.ts";

/** One Ctrl-C can arrive twice, from the terminal and from npm; a second one would kill the app mid-save. */
const ECHO_MS = 1_000;

async function start(extra: string[]): Promise<number> {
  await ensureBuild(print);
  const runtime = await prepareRuntime(print);
  await ensureSandbox(runtime.executablePath);
  const display = await ensureDisplay(print);
  try {
    print(`Starting Tapeline on Electron ${runtime.version}.`);
    return await runApp(runtime, [...display.args, ...extra], display.env);
  } finally {
    await display.stop();
  }
}

async function runApp(
  runtime: ElectronRuntime,
  extra: string[],
  env: Record<string, string>,
): Promise<number> {
  const app = spawn(runtime.executablePath, [...runtime.args, ...extra], {
    stdio: "inherit",
    env: { ...process.env, ...runtime.env, ...env },
    // Its own group on Linux and macOS, so that the terminal's Ctrl-C comes through `forward` alone.
    detached: process.platform !== "win32",
  });
  let last = Number.NEGATIVE_INFINITY;
  const forward = (signal: NodeJS.Signals): void => {
    if (performance.now() - last < ECHO_MS) return;
    last = performance.now();
    app.kill(signal);
  };
  for (const signal of ["SIGINT", "SIGTERM", "SIGHUP"] as const) process.on(signal, forward);
  const [code, signal] = (await once(app, "exit")) as [number | null, NodeJS.Signals | null];
  return code ?? 128 + (signal ? constants.signals[signal] : 0);
}

function print(line: string): void {
  console.log(line);
}

try {
  process.exitCode = await start(process.argv.slice(2));
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
