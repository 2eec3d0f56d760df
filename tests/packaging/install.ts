/**
 * `npm run package:install`: the deb as a person meets it, on a Debian or Ubuntu of its own. It is installed by apt,
 * started by an ordinary user with Chromium's sandbox, used, removed, installed again and purged. Everything is
 * written into memory, in mounts that only this program sees and that end with it: the machine stays as it is.
 *
 * `--deb FILE` tries a package that is there already, `--base FOLDER` takes another system than the running one for
 * the ground (say, what debootstrap made: only there the package has to bring every library), `--pictures FOLDER`
 * keeps pictures of the windows. Ends with 0 when all holds, 1 when something does not, 2 when it could not be tried.
 */
import { spawn, spawnSync } from "node:child_process";
import { once } from "node:events";
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { parseArgs } from "node:util";
import { hasCommand, isRoot, run } from "../../electron/runtime/host.ts";
import { makeDeb } from "../../resources/packaging/debian/make.ts";
import { makePackaged } from "../e2e/packaged.ts";
import { tryInstalling } from "./trial.ts";

const { values: wanted } = parseArgs({
  options: {
    deb: { type: "string" },
    base: { type: "string", default: "/" },
    pictures: { type: "string" },
    /** Given by this program to itself, once it has mounts of its own: the folder to work in. */
    work: { type: "string" },
  },
});
const base = resolve(wanted.base);
const notTried = 2;
/** Libraries, screen and program take about two. */
const gibibytesNeeded = 3;

/** Why the trial can't be made on this machine, as a sentence; undefined where it can. */
function whyNot(): string | undefined {
  if (process.platform !== "linux") return "It needs Linux.";
  if (!isRoot()) return "It needs root, to lay a system over this one. Start it with sudo.";
  for (const name of ["apt-get", "dpkg-deb", "runuser"]) {
    if (!hasProgram(name)) return `${base} has no ${name}: it needs a Debian or an Ubuntu.`;
  }
  const spaces = ["--mount", "--pid", "--fork", "true"];
  if (!hasCommand("unshare") || spawnSync("unshare", spaces).status !== 0)
    return "This machine lets nobody make namespaces (unshare --mount --pid), as many containers do.";
  const available =
    Number(/^MemAvailable:\s+(\d+)/m.exec(readFileSync("/proc/meminfo", "utf8"))?.[1]) / 2 ** 20;
  if (available < gibibytesNeeded) return `It needs ${gibibytesNeeded} GB of free memory.`;
  return undefined;
}

function hasProgram(name: string): boolean {
  return ["usr/bin", "usr/sbin", "bin", "sbin"].some((folder) => existsSync(join(base, folder, name)));
}

async function packageIn(folder: string): Promise<string> {
  if (wanted.deb !== undefined) return resolve(wanted.deb);
  const { resources } = await makePackaged(join(folder, "package"));
  return makeDeb({ folder: join(resources, ".."), outputFolder: folder });
}

/** Makes the package and starts this program anew with mounts and processes of its own, which end with it. */
async function outside(): Promise<number> {
  const work = mkdtempSync(join(tmpdir(), "tapeline-install-"));
  try {
    const words = [`--deb=${await packageIn(work)}`, `--base=${base}`, `--work=${work}`];
    if (wanted.pictures !== undefined) words.push(`--pictures=${resolve(wanted.pictures)}`);
    const spaces = ["--mount", "--pid", "--fork", "--kill-child", "--mount-proc"];
    const self = [process.execPath, import.meta.filename, ...words];
    // Ctrl-C reaches the trial by itself; here it is waited for, so that its folder goes with it.
    for (const signal of ["SIGINT", "SIGTERM"] as const) process.on(signal, () => {});
    const [code] = (await once(spawn("unshare", [...spaces, ...self], { stdio: "inherit" }), "exit")) as [
      number | null,
    ];
    return code ?? 1;
  } finally {
    rmSync(work, { recursive: true, force: true });
  }
}

async function inside(work: string, deb: string): Promise<number> {
  // The first process of a space hears no signal that it does not ask for (pid_namespaces(7)).
  for (const signal of ["SIGINT", "SIGTERM"] as const) process.on(signal, () => process.exit(1));
  const memory = join(work, "memory");
  await run("mount", ["-t", "tmpfs", "-o", "mode=755,size=90%", "--mkdir", "tmpfs", memory]);
  const started = performance.now();
  const seconds = () => ((performance.now() - started) / 1000).toFixed(0);
  const tell = (line: string) => console.log(`ok      ${line} (${seconds()} s)`);
  await tryInstalling({ deb, base, work: memory, pictures: wanted.pictures, tell });
  console.log("The package can be installed, used and removed.");
  return 0;
}

async function main(): Promise<number> {
  if (wanted.work !== undefined && wanted.deb !== undefined) return inside(wanted.work, wanted.deb);
  const why = whyNot();
  if (why === undefined) {
    if (base === "/")
      console.log("On this system, where libraries may be installed that the package forgets.");
    return outside();
  }
  console.error(`The package was not tried. ${why}`);
  return notTried;
}

try {
  // At once: the screen and whatever runs on it end with the first process of their space.
  process.exit(await main());
} catch (error) {
  console.error(`FAILED  ${error instanceof Error ? error.message : String(error)}`);
  process.exit(1);
}
