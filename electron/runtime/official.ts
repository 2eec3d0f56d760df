import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { downloadArtifact } from "@electron/get";
import { cacheFolder, modulesFolder, type PrintLine, run } from "./host.ts";
import { holdingLock } from "./once.ts";

/** Ms without a byte after which a download is given up; a slow one that moves is left alone. */
const SILENCE_LIMIT_MS = 10_000;

const packageFolder = join(modulesFolder, "electron");

export interface OfficialElectron {
  executablePath: string;
  version: string;
}

/** Returns the Electron that the `electron` package has already unpacked, or undefined when it is absent or older. */
export function installedElectron(): OfficialElectron | undefined {
  const version = wantedVersion();
  // The package's own installer writes path.txt last, so its presence means that unpacking finished.
  const [versionFile, pathFile] = [join(packageFolder, "dist", "version"), join(packageFolder, "path.txt")];
  if (!existsSync(versionFile) || !existsSync(pathFile)) return undefined;
  if (readFileSync(versionFile, "utf8").trim().replace(/^v/, "") !== version) return undefined;
  const executablePath = join(packageFolder, "dist", readFileSync(pathFile, "utf8").trim());
  return existsSync(executablePath) ? { executablePath, version } : undefined;
}

/**
 * Downloads the official Electron and unpacks it with the package's own installer. Returns undefined, after one
 * clear line, when it can't be reached. Mirrors are honoured (ELECTRON_MIRROR and the like).
 */
export async function downloadElectron(log: PrintLine): Promise<OfficialElectron | undefined> {
  return holdingLock(join(cacheFolder, "lock"), log, async () => {
    const already = installedElectron();
    if (already) return already;
    log(`Downloading Electron ${wantedVersion()} (about 120 MB, once).`);
    try {
      await downloadToSharedCache();
    } catch (error) {
      log(`The official Electron can't be downloaded here: ${reason(error)}.`);
      return undefined;
    }
    await run(process.execPath, [join(packageFolder, "install.js")]);
    return installedElectron();
  });
}

function wantedVersion(): string {
  return (readJson(join(packageFolder, "package.json")) as { version: string }).version;
}

async function downloadToSharedCache(): Promise<void> {
  const silence = new AbortController();
  const giveUp = (): void => silence.abort(new Error(`no answer within ${SILENCE_LIMIT_MS / 1000} seconds`));
  let timer = setTimeout(giveUp, SILENCE_LIMIT_MS);
  const stillMoving = (): void => {
    clearTimeout(timer);
    timer = setTimeout(giveUp, SILENCE_LIMIT_MS);
  };
  try {
    await downloadArtifact({
      artifactName: "electron",
      version: wantedVersion(),
      checksums: readJson(join(packageFolder, "checksums.json")) as Record<string, string>,
      downloadOptions: { signal: silence.signal, getProgressCallback: stillMoving },
    });
  } finally {
    clearTimeout(timer);
  }
}

function readJson(file: string): unknown {
  return JSON.parse(readFileSync(file, "utf8"));
}

function reason(error: unknown): string {
  const { message, cause } = error as Error;
  const text = cause instanceof Error && cause.message ? cause.message : message;
  return text.replace(/\.+$/, "");
}
