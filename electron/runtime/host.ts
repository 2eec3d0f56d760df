import { execFile } from "node:child_process";
import { accessSync, constants } from "node:fs";
import { delimiter, join, resolve } from "node:path";
import { promisify } from "node:util";

/** Takes one short line meant for people. */
export type PrintLine = (line: string) => void;

export const projectFolder = resolve(import.meta.dirname, "../..");
export const modulesFolder = join(projectFolder, "node_modules");
/** Everything this room makes is kept here; deleting the folder is always safe. */
export const cacheFolder = join(modulesFolder, ".cache", "tapeline-runtime");

const MEBIBYTE = 1024 * 1024;
const LINES_SHOWN = 15;

/** True if this process runs as root. Always false on Windows, which has no user ids. */
export function isRoot(): boolean {
  return process.getuid?.() === 0;
}

/** True if windows can be shown: always on Windows and macOS; on Linux with X or Wayland. */
export function hasDisplay(platform: string, env: Record<string, string | undefined>): boolean {
  return platform !== "linux" || Boolean(env.DISPLAY || env.WAYLAND_DISPLAY);
}

/** True if `name` is on the PATH. */
export function hasCommand(name: string): boolean {
  return (process.env.PATH ?? "").split(delimiter).some((folder) => isExecutable(join(folder, name)));
}

function isExecutable(file: string): boolean {
  try {
    accessSync(file, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/**
 * Runs a command quietly and returns its standard output. The project's own tools (the pinned Node among them) come
 * first in its PATH. When the command fails, throws an error that opens with the sentence `failure` and ends with the
 * last lines of the output.
 */
export async function run(
  command: string,
  args: string[],
  options: { cwd?: string; env?: Record<string, string>; failure?: string } = {},
): Promise<string> {
  const path = `${join(modulesFolder, ".bin")}${delimiter}${process.env.PATH ?? ""}`;
  try {
    const { stdout } = await promisify(execFile)(command, args, {
      cwd: options.cwd ?? projectFolder,
      env: { ...process.env, PATH: path, ...options.env },
      maxBuffer: 64 * MEBIBYTE,
    });
    return stdout;
  } catch (error) {
    const failure = options.failure ?? `"${command} ${args.join(" ")}" failed.`;
    throw new Error(`${failure}\n${lastLines(error)}`, { cause: error });
  }
}

function lastLines(error: unknown): string {
  const { stdout, stderr, message } = error as { stdout?: string; stderr?: string; message?: string };
  const output = `${stdout ?? ""}${stderr ?? ""}`.trim() || (message ?? String(error));
  return output.split("\n").slice(-LINES_SHOWN).join("\n");
}
