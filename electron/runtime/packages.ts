import { join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import { cacheFolder, hasCommand, isRoot, type PrintLine, run } from "./host.ts";
import { holdingLock } from "./once.ts";

const POLL_MS = 1_000;
/** Longest wait, in ms: a system's own unattended upgrade may take minutes; anything longer hangs. */
const PATIENCE_MS = 15 * 60_000;

/**
 * Returns what is missing, as the opening of a line for people ("Electron needs libnss3.so"), or undefined. It is
 * called again once it is this process's turn, since another one may have installed it meanwhile.
 */
export type WhatIsMissing = () => Promise<string | undefined>;

/**
 * Installs Debian packages as root on a system with apt-get; otherwise throws an error whose message ends in the one
 * command that does it. Processes of this checkout take turns by a lock of their own, and any other apt-get or dpkg is
 * waited for.
 */
export async function installPackages(
  packages: string[],
  need: WhatIsMissing,
  log: PrintLine,
): Promise<void> {
  const why = await need();
  if (why === undefined) return;
  if (!hasCommand("apt-get")) {
    throw new Error(`${why}. Install what carries it (Debian's names: ${packages.join(" ")}) and try again.`);
  }
  if (!isRoot()) {
    const names = namesHere(packages, await knownPackages());
    throw new Error(`${why}. Run this, then try again:\n  ${installCommand(names)}`);
  }
  await holdingLock(join(cacheFolder, "packages.lock"), log, async () => {
    if ((await need()) === undefined) return;
    log(`${why}. Installing with apt-get, as you are root.`);
    // Names are looked up after the update: a fresh system may know no packages before it.
    await aptGet(["update"], packages, log);
    const names = namesHere(packages, await knownPackages());
    await aptGet(["install", "-y", "--no-install-recommends", ...names], packages, log);
  });
}

/** Returns the one command that installs these packages, for somebody who is not root. */
export function installCommand(packages: string[]): string {
  return `sudo apt-get update && sudo apt-get install -y ${packages.join(" ")}`;
}

/** Returns the packages' names on this system: newer Debian and Ubuntu renamed some to `…t64` (64-bit time). */
export function namesHere(packages: string[], known: Set<string>): string[] {
  return packages.map((name) => (known.has(`${name}t64`) ? `${name}t64` : name));
}

async function knownPackages(): Promise<Set<string>> {
  return new Set((await run("apt-cache", ["pkgnames"])).split("\n"));
}

/**
 * Runs apt-get, and again while somebody else holds one of its locks. Its own option to wait (DPkg::Lock::Timeout)
 * covers neither the lists nor the archives, and prints nothing for the person who waits.
 */
async function aptGet(args: string[], packages: string[], log: PrintLine): Promise<void> {
  const options = {
    // In English, because the lock's holder is read from its output.
    env: { DEBIAN_FRONTEND: "noninteractive", LC_ALL: "C" },
    failure: `apt-get could not install ${packages.join(" ")}. It said:`,
  };
  const started = performance.now();
  for (let told = false; ; told = true) {
    try {
      await run("apt-get", ["-o", "DPkg::Lock::Timeout=0", ...args], options);
      return;
    } catch (error) {
      const holder = lockHolder(String(error));
      if (holder === undefined || performance.now() - started > PATIENCE_MS) throw error;
      if (!told) log(`${holder} is installing something on this system. Waiting until it has finished.`);
      await sleep(POLL_MS);
    }
  }
}

/**
 * Returns the holder of the lock that apt-get or dpkg could not get, from its English output: "apt-get (process 812)",
 * or "Another program" where it did not say. Undefined for another failure.
 */
export function lockHolder(printed: string): string | undefined {
  const apt =
    /Could not get lock [^\n]*?(?:It is held by process (?<id>\d+)(?: \((?<name>[^)]*)\))?|$)/m.exec(printed);
  const dpkg = /lock was locked by another process with pid (?<id>\d+)/.exec(printed);
  const found = apt ?? dpkg;
  if (found === null) return undefined;
  const { id, name = "Another program" } = found.groups ?? {};
  return id === undefined ? name : `${name} (process ${id})`;
}
