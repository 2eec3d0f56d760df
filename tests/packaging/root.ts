import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { mkdirSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { run } from "../../electron/runtime/host.ts";

/** The root of a system of its own: another's files below, and what is written on top of them, which is thrown away. */
export interface Root {
  /** Where it is mounted, in this process's own list of mounts. */
  readonly folder: string;
  /** What was written, for roots that are laid on top of this one. */
  readonly written: string;
}

/** Lays a root called `name` on top of the folders `below`, the topmost first. `work` must lie in memory. */
export async function layRoot(work: string, name: string, below: readonly string[]): Promise<Root> {
  const [folder, written, spare] = ["root", "written", "spare"].map((part) => join(work, name, part)) as [
    string,
    string,
    string,
  ];
  for (const each of [folder, written, spare]) mkdirSync(each, { recursive: true });
  const layers = `lowerdir=${below.join(":")},upperdir=${written},workdir=${spare}`;
  await run("mount", ["-t", "overlay", "overlay", "-o", layers, folder]);
  await mountSystem(folder);
  return { folder, written };
}

/** What every system has besides files. Nothing of the machine's own /tmp and /run gets in. */
async function mountSystem(folder: string): Promise<void> {
  for (const name of ["proc", "sys", "dev", "tmp", "run", "mnt"]) {
    mkdirSync(join(folder, name), { recursive: true });
  }
  await run("mount", ["-t", "proc", "proc", join(folder, "proc")]);
  await run("mount", ["-t", "sysfs", "-o", "ro", "sysfs", join(folder, "sys")]);
  await run("mount", ["--rbind", "/dev", join(folder, "dev")]);
  await run("mount", ["-t", "tmpfs", "-o", "mode=1777", "tmpfs", join(folder, "dev/shm")]);
  await run("mount", ["-t", "tmpfs", "-o", "mode=1777", "tmpfs", join(folder, "tmp")]);
  await run("mount", ["-t", "tmpfs", "-o", "mode=755", "tmpfs", join(folder, "run")]);
}

/** Puts a text into the root's file, in place of what stands there (a link, as the resolver's settings often are). */
export function putFile(root: Root, name: string, text: string, mode = 0o644): void {
  rmSync(join(root.folder, name), { force: true });
  writeFileSync(join(root.folder, name), text, { mode });
}

/**
 * Turns the root of a command into the folder, as a system's start does it: Chromium builds no sandbox of user
 * namespaces in a mere chroot, because the kernel refuses them there (user_namespaces(7)).
 */
const turn = 'cd "$1" && shift && pivot_root . mnt && cd / && umount -l /mnt && exec "$@"';

const plain = { PATH: "/usr/sbin:/usr/bin:/sbin:/bin", LANG: "C.UTF-8", DEBIAN_FRONTEND: "noninteractive" };

function wordsFor(root: Root, command: readonly string[]): string[] {
  return ["--mount", "sh", "-c", turn, "sh", root.folder, ...command];
}

/** Runs a command as the root's own root and returns what it printed. Throws with its last lines when it fails. */
export async function inRoot(root: Root, command: readonly string[]): Promise<string> {
  const words = Object.entries(plain).map(([name, value]) => `${name}=${value}`);
  return run("unshare", wordsFor(root, ["env", "-i", ...words, ...command]));
}

/** A command that runs, and all that it has printed so far. */
export interface Running {
  readonly child: ChildProcess;
  readonly printed: () => string;
  readonly ended: Promise<number | null>;
}

/** Starts a command in the root, as one of its users where one is named, and does not wait for it. */
export function startInRoot(
  root: Root,
  command: readonly string[],
  { user, env = {} }: { readonly user?: string; readonly env?: Record<string, string> } = {},
): Running {
  const home = user === undefined ? "/root" : `/home/${user}`;
  const values = Object.entries({ ...plain, HOME: home, ...env }).map(([name, value]) => `${name}=${value}`);
  const who = user === undefined ? [] : ["runuser", "-u", user, "--"];
  const words = wordsFor(root, [...who, "env", "-i", "-C", home, ...values, ...command]);
  const child = spawn("unshare", words, { stdio: ["ignore", "pipe", "pipe"] });
  let output = "";
  for (const stream of [child.stdout, child.stderr]) {
    stream.on("data", (text) => {
      output += text;
    });
  }
  const ended = once(child, "exit").then(([code]) => code as number | null);
  return { child, printed: () => output, ended };
}
