import { hasCommand, hasDisplay, type PrintLine, run } from "./host.ts";
import { installPackages } from "./packages.ts";

/** Electron's packages on a Debian or Ubuntu system, named as in Debian 12. */
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
 * Ensures that the system has every library the executable is linked to. Throws what to do if not. If a virtual display
 * will be needed too, the same command installs it.
 */
export async function ensureLibraries(executablePath: string, log: PrintLine): Promise<void> {
  if (process.platform !== "linux") return;
  const missing = async (): Promise<string[]> => missingLibraries(await run("ldd", [executablePath]));
  if ((await missing()).length === 0) return;
  const needsXvfb = !hasDisplay(process.platform, process.env) && !hasCommand("Xvfb");
  const packages = needsXvfb ? [...ELECTRON_PACKAGES, "xvfb"] : ELECTRON_PACKAGES;
  await installPackages(packages, async () => need(await missing()), log);
  const still = await missing();
  if (still.length > 0)
    throw new Error(`Electron still needs ${still.join(", ")}. Install them and try again.`);
}

function need(missing: string[]): string | undefined {
  return missing.length === 0 ? undefined : `Electron needs ${shortList(missing)}`;
}

/** Returns the libraries that `ldd` could not find, each once, from its output. */
export function missingLibraries(lddOutput: string): string[] {
  const names = [...lddOutput.matchAll(/^\s*(\S+) => not found$/gm)].map((match) => match[1] ?? "");
  return [...new Set(names)];
}

function shortList(names: string[]): string {
  const shown = names.slice(0, 3).join(", ");
  return names.length > 3 ? `${shown} and ${names.length - 3} more system libraries` : shown;
}
