import { existsSync, readFileSync } from "node:fs";
import { cp, readFile, realpath, rename, rm, writeFile } from "node:fs/promises";
import { delimiter, dirname, join } from "node:path";
import { cacheFolder, hasCommand, modulesFolder, type PrintLine, run } from "./host.ts";
import { makeOnce } from "./once.ts";
import { installPackages } from "./packages.ts";

/**
 * Electron 33 offers Node-API 9. The better-sqlite3 prebuilt needs 10, because it keeps references to plain strings;
 * version 9 can only keep references to objects. So here, for the registry runtime only, the addon is built once with
 * every kept string inside an object. User-defined SQL aggregates that start from a plain value still need 10; the app
 * has none.
 */
const RECIPE = 1;

const sourceFolder = join(modulesFolder, "better-sqlite3");
const { version } = JSON.parse(readFileSync(join(sourceFolder, "package.json"), "utf8")) as {
  version: string;
};
const builtFolder = join(cacheFolder, `better-sqlite3-${version}-${RECIPE}`);

/** The addon's place once it has been built. */
export const sqliteBinding = join(builtFolder, "better_sqlite3.node");

const HELD_STRING = `class HeldString {
public:
	HeldString() = default;
	explicit HeldString(Napi::String text) : box(Napi::Persistent(Napi::Object::New(text.Env()))) {
		box.Value().Set("text", text);
	}
	Napi::String Value() const { return box.Value().Get("text").As<Napi::String>(); }
private:
	Napi::ObjectReference box;
};
`;

const BUILD_FAILURE =
  "The build of better-sqlite3 failed. It needs python3, make, g++ and the headers of Node.";

/** Builds the addon unless it exists. Throws, with the build's last output, when it can't. */
export async function ensureSqliteBinding(log: PrintLine): Promise<void> {
  await makeOnce(builtFolder, log, async (folder) => {
    await ensureBuildTools(log);
    log("Building better-sqlite3 for it (about a minute, once).");
    const source = join(folder, "source");
    // Links are followed where a package manager links packages: through a copied link the original would change.
    await cp(await realpath(sourceFolder), source, { recursive: true });
    await patchSource(source);
    const gyp = join(modulesFolder, "node-gyp", "bin", "node-gyp.js");
    const options = ["--release", "--force_build=1", "--jobs=max", ...(await headerOptions())];
    await run(process.execPath, [gyp, "rebuild", ...options], { cwd: source, failure: BUILD_FAILURE });
    await rename(
      join(source, "build", "Release", "better_sqlite3.node"),
      join(folder, "better_sqlite3.node"),
    );
    await rm(source, { recursive: true });
  });
}

async function ensureBuildTools(log: PrintLine): Promise<void> {
  const tools = ["python3", "make", "g++"];
  const missing = (): string[] => tools.filter((name) => !hasCommand(name));
  const need = async () => (missing().length === 0 ? undefined : `Building needs ${missing().join(", ")}`);
  await installPackages(missing(), need, log);
}

/** Changes a copy of the better-sqlite3 sources to Node-API 9. Throws when they are not as expected. */
export async function patchSource(source: string): Promise<void> {
  await rewrite(join(source, "binding.gyp"), [["NAPI_VERSION=10", "NAPI_VERSION=9"]]);
  for (const name of ["constants.cpp", "bind-map.cpp"]) {
    await rewrite(join(source, "src", "util", name), [
      ["Napi::Reference<Napi::String>", "HeldString"],
      ["Napi::Persistent(", "HeldString("],
    ]);
  }
  const helpers = join(source, "src", "util", "helpers.cpp");
  await rewrite(helpers, [["Napi::Reference<Napi::String>", "HeldString"]]);
  await writeFile(helpers, HELD_STRING + (await readFile(helpers, "utf8")));
}

async function rewrite(file: string, changes: [from: string, to: string][]): Promise<void> {
  let text = await readFile(file, "utf8");
  for (const [from, to] of changes) {
    if (!text.includes(from))
      throw new Error(`better-sqlite3 ${version} has changed: no "${from}" in ${file}.`);
    text = text.replaceAll(from, to);
  }
  await writeFile(file, text);
}

async function headerOptions(): Promise<string[]> {
  const found = await nodeWithHeaders();
  return found === undefined ? [] : [`--nodedir=${found}`];
}

/**
 * Finds the folder of a Node that has its headers (`include/node`). The addon uses Node-API only, so any recent Node's
 * will do: those in npm's settings, or those beside a Node on the PATH. Undefined if there are none: node-gyp downloads
 * them then.
 */
export async function nodeWithHeaders(): Promise<string | undefined> {
  const told = (await run("npm", ["config", "get", "nodedir"])).trim();
  const besideNode = (process.env.PATH ?? "").split(delimiter).map((folder) => dirname(folder));
  return [told, ...besideNode].find((folder) => existsSync(join(folder, "include/node/common.gypi")));
}
