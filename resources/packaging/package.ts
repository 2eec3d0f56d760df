/**
 * `npm run package`, after the build: the program for the system it runs on, with an Electron of its own. Always a
 * folder to start it from; on Debian and Ubuntu a deb; other installers where their tools can be had. All of it lies
 * in `dist/`, or where `--output` says. With `--folder` the folder alone.
 */
import { copyFile, mkdir, readdir, rm, writeFile } from "node:fs/promises";
import { dirname, join, relative, resolve } from "node:path";
import { parseArgs } from "node:util";
import { build, Platform } from "electron-builder";
import { type ElectronRuntime, findRuntime } from "../../electron/runtime/find.ts";
import { projectFolder } from "../../electron/runtime/host.ts";
import { configurationOf, installers, type PackageParts, type System } from "./configuration.ts";
import { offerDeb } from "./debian/make.ts";
import { noticesText, partsOfProgram } from "./notices.ts";
import { carriedLibrary, placeSqlite } from "./sqlite.ts";
import { toolsCanBeHad } from "./tools.ts";
import { ownVersion } from "./version.ts";

const { values: wanted } = parseArgs({
  options: { folder: { type: "boolean", default: false }, output: { type: "string" } },
});
const outputFolder = wanted.output === undefined ? join(projectFolder, "dist") : resolve(wanted.output);
const stage = join(outputFolder, "stage");
const system = process.platform as System;

async function makePackage(): Promise<void> {
  await clearOutput();
  const parts = await partsFor(await findRuntime(console.log));
  const folder = await makeFolder(parts);
  console.log(`The program is in ${relative(projectFolder, folder)}.`);
  if (!wanted.folder && system === "linux") console.log(await offerDeb({ folder, outputFolder }));
  if (!wanted.folder) await makeInstallers(folder, parts);
  await rm(stage, { recursive: true });
}

/** `dist/` is ours to empty; a folder that somebody names is not. */
async function clearOutput(): Promise<void> {
  if (wanted.output === undefined) await rm(outputFolder, { recursive: true, force: true });
  await mkdir(outputFolder, { recursive: true });
  if ((await readdir(outputFolder)).length === 0) return;
  throw new Error(`${outputFolder} is not empty. Name a folder that is.`);
}

async function partsFor(runtime: ElectronRuntime): Promise<PackageParts> {
  // A runtime that needs a library of its own says so, as it does for `npm start`.
  const library = runtime.env.TAPELINE_SQLITE_BINDING ?? carriedLibrary;
  return {
    electronVersion: runtime.version,
    electronFolder: electronFolderOf(runtime.executablePath),
    sqlite: await placeSqlite(library, join(stage, "sqlite")),
    notices: await placeNotices(join(stage, "notices")),
    outputFolder,
  };
}

/** On macOS the executable lies three folders deep in the app of a distribution. */
function electronFolderOf(executable: string): string {
  return process.platform === "darwin" ? join(executable, "../../../..") : dirname(executable);
}

async function placeNotices(folder: string): Promise<string> {
  await mkdir(folder, { recursive: true });
  await writeFile(join(folder, "THIRD-PARTY-NOTICES.txt"), noticesText(partsOfProgram(), await ownVersion()));
  await copyFile(join(projectFolder, "LICENSE"), join(folder, "LICENSE.tapeline.txt"));
  return folder;
}

async function makeFolder(parts: PackageParts): Promise<string> {
  let made = "";
  await build({
    targets: Platform.current().createTarget("dir"),
    config: {
      ...configurationOf(parts, system),
      // A runtime for development has the project for its app; the package has an app of its own.
      afterExtract: ({ appOutDir }) => rm(join(appOutDir, "resources", "app"), { force: true }),
      afterPack: ({ appOutDir }) => {
        made = appOutDir;
        return Promise.resolve();
      },
    },
  });
  return made;
}

async function makeInstallers(folder: string, parts: PackageParts): Promise<void> {
  const kinds = installers[system];
  if (await toolsCanBeHad()) {
    for (const kind of kinds) await makeInstaller(kind, folder, parts);
  } else {
    console.log(
      `No ${kinds.join(" and no ")}: the tools for them come from GitHub, which can't be reached here.`,
    );
  }
}

async function makeInstaller(kind: string, prepackaged: string, parts: PackageParts): Promise<void> {
  // Made anew each time: electron-builder writes into what it is given.
  const config = configurationOf(parts, system);
  try {
    const files = await build({ targets: Platform.current().createTarget(kind), prepackaged, config });
    console.log(`Made ${files.map((file) => relative(projectFolder, file)).join(", ")}.`);
  } catch (error) {
    const [why = ""] = (error instanceof Error ? error.message : String(error)).split("\n");
    console.log(`No ${kind} could be made here: ${why}`);
  }
}

try {
  await makePackage();
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
