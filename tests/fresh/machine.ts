import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { copyFile, mkdir, mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { createInterface } from "node:readline";
import type { Readable } from "node:stream";
import { hasCommand, isRoot, run } from "../../electron/runtime/host.ts";
import { installPackages } from "../../electron/runtime/packages.ts";
import { nodeWithHeaders } from "../../electron/runtime/sqlite.ts";

/** A Debian with nothing but its base: no library of Electron's, no display, no compiler, an empty home. */
export interface Machine {
  /** Runs a line of shell in the project's folder there, as root; `told` gets each line that it prints. */
  readonly run: (line: string, told: (line: string) => void) => Promise<number>;
  /** Ends everything that runs there, and deletes it. */
  readonly remove: () => Promise<void>;
}

export interface MachineParts {
  /** The folder that the machine has as its project; what is written there lands beside it and is thrown away. */
  readonly project: string;
  /** The Node that the machine has. */
  readonly node: string;
  /** The folder of the npm that it has. */
  readonly npm: string;
}

/** Says in a sentence what keeps a machine from being made here; undefined when nothing does. */
export function whyNoMachine(): string | undefined {
  if (process.platform !== "linux" || !hasCommand("apt-get")) return "This is no Debian or Ubuntu system.";
  if (!isRoot()) return "Only root may make a new system's folder.";
  const missing = ["unshare", "nsenter", "chroot"].find((name) => !hasCommand(name));
  return missing && `There is no ${missing}.`;
}

/** Makes a new machine from the packages of this system's own release. Takes a minute or two. */
export async function makeMachine(parts: MachineParts): Promise<Machine> {
  const need = async () => (hasCommand("debootstrap") ? undefined : "A new machine needs debootstrap");
  await installPackages(["debootstrap"], need, console.log);
  // On the disk and not in memory: with the project's modules it grows to gigabytes.
  const folder = await mkdtemp("/var/tmp/tapeline-fresh-");
  try {
    const root = join(folder, "root");
    await installBase(root);
    await furnish(root, parts);
    return await boot(folder, root, parts);
  } catch (error) {
    await removeFolder(folder);
    throw error;
  }
}

async function installBase(root: string): Promise<void> {
  const release = /^VERSION_CODENAME=(.+)$/m.exec(await readFile("/etc/os-release", "utf8"))?.[1] ?? "stable";
  const mirrors = await run("apt-get", [
    "indextargets",
    "--format",
    "$(REPO_URI) $(CODENAME)",
    "Created-By: Packages",
  ]);
  const mirror = mirrors
    .split("\n")
    .find((line) => line.endsWith(` ${release}`))
    ?.split(" ")[0];
  if (mirror === undefined)
    throw new Error(`apt-get knows no packages of ${release}. Run apt-get update first.`);
  const options = ["--variant=minbase", "--include=ca-certificates"];
  await run("debootstrap", [...options, release, root, mirror], {
    failure: "A new Debian could not be made.",
  });
}

/** Gives the new system a Node with npm and the headers that this one has, the names and certificates that this one trusts, and places to mount on. */
async function furnish(root: string, { node, npm }: MachineParts): Promise<void> {
  for (const name of ["project", "opt/node/bin", "opt/npm"])
    await mkdir(join(root, name), { recursive: true });
  await copyFile(node, join(root, "opt/node/bin/node"));
  await run("cp", ["-a", `${npm}/.`, join(root, "opt/npm")]);
  const headers = await nodeWithHeaders();
  if (headers !== undefined) {
    await mkdir(join(root, "opt/node/include"));
    await run("cp", ["-aL", join(headers, "include/node"), join(root, "opt/node/include")]);
  }
  const script = '#!/bin/sh\nexec node /opt/npm/bin/npm-cli.js "$@"\n';
  await writeFile(join(root, "opt/node/bin/npm"), script, { mode: 0o755 });
  await run("cp", ["-L", "/etc/resolv.conf", "/etc/hosts", join(root, "etc")]);
  const certificates = "etc/ssl/certs/ca-certificates.crt";
  await copyFile(`/${certificates}`, join(root, certificates));
}

/** Mounts what a system has besides files, and keeps one process in there that the others join. */
async function boot(folder: string, root: string, { project }: MachineParts): Promise<Machine> {
  for (const name of ["upper", "work"]) await mkdir(join(folder, name));
  const layers = `lowerdir=${project},upperdir=${folder}/upper,workdir=${folder}/work`;
  const mounts = [
    `mount -t overlay overlay -o ${layers} ${root}/project`,
    `mount -t proc proc ${root}/proc`,
    `mount --rbind /sys ${root}/sys`,
    `mount --rbind /dev ${root}/dev`,
    `echo ready`,
    `exec chroot ${root} sleep infinity`,
  ];
  const init = spawn("unshare", [
    "--mount",
    "--pid",
    "--fork",
    "--kill-child",
    "sh",
    "-ec",
    mounts.join("\n"),
  ]);
  const said = await firstWords(init);
  if (said !== "ready") throw new Error(`The new machine did not start: ${said}`);
  const inside = (await readFile(`/proc/${init.pid}/task/${init.pid}/children`, "utf8")).trim();
  return {
    run: (line, told) => runInside(inside, line, told),
    remove: async () => {
      // It heeds nothing gentler while it waits for what runs in there; the kernel ends that with it.
      init.kill("SIGKILL");
      if (init.exitCode === null && init.signalCode === null) await once(init, "exit");
      await removeFolder(folder);
    },
  };
}

function firstWords(child: ChildProcess): Promise<string> {
  return new Promise((resolve) => {
    for (const stream of [child.stdout, child.stderr])
      stream?.once("data", (text) => resolve(String(text).trim()));
    child.once("exit", (code) => resolve(`it ended with ${code}`));
  });
}

async function runInside(inside: string, line: string, told: (line: string) => void): Promise<number> {
  const shell = ["sh", "-c", `cd /project && ${line}`];
  const child = spawn("nsenter", ["-t", inside, "--mount", "--pid", "--root", "--wd", ...shell], {
    stdio: ["ignore", "pipe", "pipe"],
    env: environment(),
  });
  for (const stream of [child.stdout, child.stderr])
    createInterface({ input: stream as Readable }).on("line", told);
  const [code] = (await once(child, "close")) as [number | null];
  return code ?? 1;
}

/** What a login there has; of this machine only how the network is reached. */
function environment(): Record<string, string> {
  const network = Object.entries(process.env).filter(
    (entry): entry is [string, string] =>
      entry[1] !== undefined &&
      /^(https?_proxy|no_proxy|npm_config_registry|NODE_EXTRA_CA_CERTS)$/i.test(entry[0]),
  );
  return {
    ...Object.fromEntries(network),
    HOME: "/root",
    PATH: "/opt/node/bin:/usr/sbin:/usr/bin:/sbin:/bin",
  };
}

function removeFolder(folder: string): Promise<void> {
  return rm(folder, { recursive: true, force: true, maxRetries: 5 });
}
