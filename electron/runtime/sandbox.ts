import { statSync } from "node:fs";
import { dirname, join } from "node:path";
import { hasCommand, isRoot, run } from "./host.ts";

const SETUID = 0o4000;

/**
 * Ensures that Chromium's sandbox works for users other than root: by the kernel's user namespaces, or else by its
 * helper program. Some systems (Ubuntu since 23.10, many containers) forbid the former to ordinary users. Throws an
 * error whose message ends in the one command that helps. Root runs without the sandbox.
 */
export async function ensureSandbox(executablePath: string): Promise<void> {
  if (process.platform !== "linux" || isRoot()) return;
  const helper = join(dirname(executablePath), "chrome-sandbox");
  if (isOwnedBySystem(helper) || (await namespacesWork())) return;
  throw new Error(
    "Your system lets ordinary users build no sandbox, and Electron does not start without one. " +
      `Run this once, then try again:\n  ${helperCommand(helper)}`,
  );
}

/** Returns the command that gives the helper its rights: owned by root, mode 4755. */
export function helperCommand(helper: string): string {
  return `sudo chown root:root "${helper}" && sudo chmod 4755 "${helper}"`;
}

function isOwnedBySystem(helper: string): boolean {
  const info = statSync(helper, { throwIfNoEntry: false });
  return info !== undefined && info.uid === 0 && (info.mode & SETUID) !== 0;
}

async function namespacesWork(): Promise<boolean> {
  // Without the tool to try it, leave the report to Chromium.
  if (!hasCommand("unshare")) return true;
  try {
    await run("unshare", ["--map-root-user", "--net", "true"]);
    return true;
  } catch {
    return false;
  }
}
