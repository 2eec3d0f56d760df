import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import type { Readable } from "node:stream";
import { hasCommand, hasDisplay, type PrintLine } from "./host.ts";
import { installPackages } from "./packages.ts";

export interface Display {
  /** Variables to add to the app's environment: DISPLAY, or none when the system has a display of its own. */
  env: Record<string, string>;
  /** Arguments to add for the app. */
  args: string[];
  /** Ends the virtual display, if one was started here. */
  stop(): Promise<void>;
}

/**
 * A system without a display mostly lacks a graphics card and a desktop bus too. Chromium copes with both, but prints a
 * dozen complaints at every start; fatal errors are still printed.
 */
const UNSEEN_ARGUMENTS = ["--disable-gpu", "--log-level=3"];

/**
 * Ensures that there is a display. Without one, starts a virtual one (Xvfb) of `size`, in pixels, on a free number, and
 * prints that. Call `stop` when the app has ended.
 */
export async function ensureDisplay(log: PrintLine, size = { width: 1920, height: 1080 }): Promise<Display> {
  if (hasDisplay(process.platform, process.env)) return { env: {}, args: [], stop: async () => {} };
  await ensureVirtualDisplay(log);
  const server = startServer(size);
  const number = await displayNumber(server);
  log(`There is no display: windows open in a virtual one (Xvfb, ${size.width} x ${size.height}, unseen).`);
  const endWithUs = (): void => void server.kill();
  process.once("exit", endWithUs);
  return {
    env: { DISPLAY: `:${number}` },
    args: UNSEEN_ARGUMENTS,
    stop: async () => {
      process.off("exit", endWithUs);
      if (server.exitCode !== null || server.signalCode !== null) return;
      server.kill();
      await once(server, "exit");
    },
  };
}

/** Ensures that a virtual display can be started where there is no real one. */
export async function ensureVirtualDisplay(log: PrintLine): Promise<void> {
  if (hasDisplay(process.platform, process.env)) return;
  const need = async () => (hasCommand("Xvfb") ? undefined : "There is no display, and no Xvfb to stand in");
  await installPackages(["xvfb"], need, log);
}

function startServer(size: { width: number; height: number }): ChildProcess {
  const screen = ["-screen", "0", `${size.width}x${size.height}x24`];
  // It picks a free display itself and writes the number to file 3 once it is ready. Without -noreset it would restart
  // between two apps, and the second could meet it half-way.
  const args = ["-displayfd", "3", ...screen, "-nolisten", "tcp", "-noreset"];
  // Its own group, so that Ctrl-C reaches the app first and the display stays until the app has closed.
  return spawn("Xvfb", args, { stdio: ["ignore", "ignore", "pipe", "pipe"], detached: true });
}

async function displayNumber(server: ChildProcess): Promise<number> {
  let complaint = "";
  server.stderr?.on("data", (text) => {
    complaint += text;
  });
  const answer = server.stdio[3] as Readable;
  const ended = once(server, "exit").then(() => {
    throw new Error(`The virtual display did not start: ${complaint.trim()}`);
  });
  const [text] = await Promise.race([once(answer, "data"), ended]);
  return Number(String(text));
}
