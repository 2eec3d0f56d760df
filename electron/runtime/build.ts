/**
 * `npm run build`: builds main process, preload script and pages into out/, unless they are up to date with their
 * sources. Processes that ask at the same time (two starts, a start beside the tests) take turns, so that none of them
 * empties the folder that another one is starting from.
 */
import { spawn } from "node:child_process";
import { once } from "node:events";
import { existsSync, readFileSync } from "node:fs";
import { rm, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { cacheFolder, modulesFolder, type PrintLine, projectFolder } from "./host.ts";
import { holdingLock } from "./once.ts";
import { sumOf } from "./sum.ts";

/** All inputs of a build; the lock file represents the modules. */
const SOURCES = ["electron", "renderer", "resources"];
const SINGLE_FILES = ["electron.vite.config.ts", "package.json", "package-lock.json"];

const BUILT = ["main", "page", "pictures", "preload", "renderer"];
/** Says of which sources what lies beside it was built, and what that was. */
const stampFile = join(projectFolder, "out", "built-from.txt");

/** Builds unless the build is up to date. Throws when it fails, after printing why. */
export async function ensureBuild(log: PrintLine): Promise<void> {
  await holdingLock(join(cacheFolder, "build.lock"), log, async () => {
    const sources = await sumOf(projectFolder, SOURCES, SINGLE_FILES);
    if (existsSync(stampFile) && readFileSync(stampFile, "utf8") === (await stampOf(sources))) return;
    await rm(stampFile, { force: true });
    await build();
    await writeFile(stampFile, await stampOf(sources));
  });
}

/** What the stamp says while what was built of these sources is as it was: a lost or damaged file is built again. */
async function stampOf(sources: string): Promise<string> {
  return `${sources} ${await sumOf(join(projectFolder, "out"), BUILT)}`;
}

/** The program with its windows, and beside it the page for everybody, each by a configuration of its own. */
async function build(): Promise<void> {
  await run(join("electron-vite", "bin", "electron-vite.js"), ["build", "--logLevel", "warn"]);
  await run(join("vite", "bin", "vite.js"), [
    "build",
    "--config",
    join("renderer", "page", "vite.config.ts"),
    "--logLevel",
    "warn",
  ]);
}

async function run(program: string, words: readonly string[]): Promise<void> {
  const child = spawn(process.execPath, [join(modulesFolder, program), ...words], {
    cwd: projectFolder,
    stdio: "inherit",
  });
  const [code] = (await once(child, "exit")) as [number | null];
  if (code !== 0) throw new Error("The program could not be built. The lines above say why.");
}

if (import.meta.main) await ensureBuild(console.log);
