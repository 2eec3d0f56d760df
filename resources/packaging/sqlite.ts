import { copyFile, mkdir } from "node:fs/promises";
import { join } from "node:path";
import { modulesFolder } from "../../electron/runtime/host.ts";

const libraryFolder = join(modulesFolder, "better-sqlite3");

/** The library that better-sqlite3 carries for this machine and any Electron of today. */
export const carriedLibrary = join(libraryFolder, "prebuilds", `${process.platform}-${process.arch}.node`);

/**
 * Puts the native library into `folder` under the name that better-sqlite3 looks for, and tells which files of it the
 * package needs: its scripts, its licence and that one library, not those of seven other systems nor its sources.
 */
export async function placeSqlite(library: string, folder: string) {
  await mkdir(folder, { recursive: true });
  await copyFile(library, join(folder, `${process.platform}-${process.arch}.node`));
  const to = "node_modules/better-sqlite3";
  const scripts = ["lib/{index,binding,database,util,sqlite-error}.js", "lib/methods/*.js"];
  return [
    { from: "node_modules/better-sqlite3", to, filter: ["package.json", "LICENSE", ...scripts] },
    { from: folder, to: `${to}/prebuilds`, filter: ["*.node"] },
  ];
}
