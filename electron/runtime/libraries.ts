import { hasCommand, hasDisplay, isRoot, type Log, run } from "./host.ts";

/** What Electron needs of a Debian or Ubuntu system, by the names of Debian 12. */
const ELECTRON_PACKAGES = [
  "libgtk-3-0",
  "libnss3",
  "libatk-bridge2.0-0",
  "libcups2",
  "libgbm1",
  "libasound2",
  "libxss1",
];

/**
 * Makes sure that the system has every library the executable is linked to. Throws what to do when it hasn't.
 * Where a virtual display will be needed too, that comes with the same command.
 */
export async function ensureLibraries(executablePath: string, log: Log): Promise<void> {
  if (process.platform !== "linux") return;
  const missing = missingLibraries(await run("ldd", [executablePath]));
  if (missing.length === 0) return;
  const needsXvfb = !hasDisplay(process.platform, process.env) && !hasCommand("Xvfb");
  const packages = needsXvfb ? [...ELECTRON_PACKAGES, "xvfb"] : ELECTRON_PACKAGES;
  await installPackages(packages, `Electron needs ${shortList(missing)}`, log);
  const still = missingLibraries(await run("ldd", [executablePath]));
  if (still.length > 0)
    throw new Error(`Electron still needs ${still.join(", ")}. Install them and try again.`);
}

/** The libraries that `ldd` could not find, each once, from what it printed. */
export function missingLibraries(lddOutput: string): string[] {
  const names = [...lddOutput.matchAll(/^\s*(\S+) => not found$/gm)].map((match) => match[1] ?? "");
  return [...new Set(names)];
}

function shortList(names: string[]): string {
  const shown = names.slice(0, 3).join(", ");
  return names.length > 3 ? `${shown} and ${names.length - 3} more system libraries` : shown;
}

/**
 * Installs Debian packages when this is root on a system with apt-get; otherwise throws an error whose message
 * ends in the one command that does it. `why` opens the line for people, for example "Electron needs libnss3.so".
 */
export async function installPackages(packages: string[], why: string, log: Log): Promise<void> {
  if (!hasCommand("apt-get")) {
    throw new Error(`${why}. Install what carries it (Debian's names: ${packages.join(" ")}) and try again.`);
  }
  if (!isRoot()) {
    const names = namesHere(packages, await knownPackages());
    throw new Error(`${why}. Run this, then try again:\n  ${installCommand(names)}`);
  }
  log(`${why}. Installing with apt-get, as you are root.`);
  const quiet = {
    env: { DEBIAN_FRONTEND: "noninteractive" },
    failure: `apt-get could not install ${packages.join(" ")}. It said:`,
  };
  // The names are looked up after the update: a fresh system may know no packages at all before it.
  await run("apt-get", ["update"], quiet);
  const names = namesHere(packages, await knownPackages());
  const waitForOthers = ["-o", "DPkg::Lock::Timeout=300"];
  await run("apt-get", [...waitForOthers, "install", "-y", "--no-install-recommends", ...names], quiet);
}

/** The one command that installs these packages, for somebody who is not root. */
export function installCommand(packages: string[]): string {
  return `sudo apt-get update && sudo apt-get install -y ${packages.join(" ")}`;
}

/** Newer Debian and Ubuntu renamed some libraries to `…t64` (64-bit time); takes that name where it is known. */
export function namesHere(packages: string[], known: Set<string>): string[] {
  return packages.map((name) => (known.has(`${name}t64`) ? `${name}t64` : name));
}

async function knownPackages(): Promise<Set<string>> {
  return new Set((await run("apt-cache", ["pkgnames"])).split("\n"));
}
