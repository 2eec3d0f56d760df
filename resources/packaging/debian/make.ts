import { createHash } from "node:crypto";
import { chmod, mkdir, mkdtemp, readdir, readFile, rm, stat, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join, relative } from "node:path";
import { hasCommand, projectFolder, run } from "../../../electron/runtime/host.ts";
import { ownVersion } from "../version.ts";
import { controlText, debianArchitecture, debianVersion } from "./control.ts";
import { layTree } from "./tree.ts";

/** What a deb is made from, and how. */
export interface DebParts {
  /** The unpacked program, by electron-builder. */
  readonly folder: string;
  readonly outputFolder: string;
  /** Whether the files are left as they are, which is quick: for trying the package out. */
  readonly unpacked?: boolean;
}

/** As small as xz's quick levels in a fifth of their time; Debian 12 reads it, which the program needs anyway. */
const compression = ["-Zzstd", "-z9"];

/** Whether this machine has what makes a deb: Debian's and Ubuntu's own tool, which needs neither root nor a network. */
export function canMakeDeb(): boolean {
  return hasCommand("dpkg-deb");
}

/** Makes the package where that can be done, and says for people what came of it. */
export async function offerDeb(parts: DebParts): Promise<string> {
  if (!canMakeDeb())
    return "No deb: it is made with dpkg-deb, which Debian and Ubuntu have (package dpkg). Package it there.";
  const file = await makeDeb(parts);
  return `Made ${relative(projectFolder, file)}. This installs it:\n  sudo apt install ${file}`;
}

/**
 * Makes the package for Debian and Ubuntu and returns its file. All of it belongs to root, whoever makes it.
 * @throws Error when dpkg-deb is missing or does not like what it is given.
 */
export async function makeDeb({ folder, outputFolder, unpacked = false }: DebParts): Promise<string> {
  const version = await ownVersion();
  const name = `tapeline_${debianVersion(version)}_${debianArchitecture()}.deb`;
  const stage = await mkdtemp(join(tmpdir(), "tapeline-deb-"));
  try {
    await chmod(stage, 0o755);
    await layTree(stage, folder);
    await layControl(stage, version);
    const how = ["--root-owner-group", "--build", stage, join(outputFolder, name)];
    await run("dpkg-deb", [...(unpacked ? ["-Znone"] : compression), ...how], {
      failure: "dpkg-deb could not make the package. It said:",
    });
  } finally {
    await rm(stage, { recursive: true, force: true });
  }
  return join(outputFolder, name);
}

async function layControl(stage: string, version: string): Promise<void> {
  const files = await filesIn(stage);
  const [installedSize, sums] = [await kibibytes(stage), await sumsOf(stage, files)];
  const folder = join(stage, "DEBIAN");
  await mkdir(folder);
  await chmod(folder, 0o755);
  await writeFile(join(folder, "control"), controlText({ version, installedSize }), { mode: 0o644 });
  await writeFile(join(folder, "md5sums"), sums, { mode: 0o644 });
}

async function filesIn(stage: string): Promise<string[]> {
  const entries = await readdir(stage, { withFileTypes: true, recursive: true });
  return entries
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .sort();
}

/** The room that the package takes once it is installed, each entry rounded up to a KiB (deb-substvars(5)). */
async function kibibytes(stage: string): Promise<number> {
  const entries = await readdir(stage, { withFileTypes: true, recursive: true });
  const sizes = entries.map(async (entry) =>
    entry.isFile() ? Math.ceil((await stat(join(entry.parentPath, entry.name))).size / 1024) : 1,
  );
  return (await Promise.all(sizes)).reduce((sum, size) => sum + size, 0);
}

/** What `dpkg --verify` holds the installed files against (deb-md5sums(5)); no guard against anybody. */
async function sumsOf(stage: string, files: readonly string[]): Promise<string> {
  const lines: string[] = [];
  for (const file of files) {
    const sum = createHash("md5").update(await readFile(file));
    lines.push(`${sum.digest("hex")}  ${relative(stage, file)}\n`);
  }
  return lines.join("");
}
