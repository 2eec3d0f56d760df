import { chmod, copyFile, mkdir, readdir, readFile, stat, symlink, writeFile } from "node:fs/promises";
import { basename, dirname, join, relative } from "node:path";
import { projectFolder } from "../../../electron/runtime/host.ts";
import { installWords } from "../words.ts";
import { desktopEntryText } from "./desktop-entry.ts";

/** Where the program lies in the package, from the root. */
const programFolder = "usr/lib/tapeline";
const docFolder = "usr/share/doc/tapeline";

/**
 * Lays everything that the package installs below `root`, from the unpacked program in `folder`. Whatever the umask
 * and the modes of the machine that packages, nobody but root may write to any of it.
 */
export async function layTree(root: string, folder: string): Promise<void> {
  await layProgram(folder, join(root, programFolder));
  await linkTo(join(root, "usr/bin/tapeline"), join(root, programFolder, "tapeline"));
  await layText(join(root, "usr/share/applications/tapeline.desktop"), desktopEntryText());
  await layIcons(join(root, "usr/share/icons/hicolor"));
  await layLicences(root, folder);
}

async function layProgram(folder: string, target: string): Promise<void> {
  for (const entry of await readdir(folder, { withFileTypes: true, recursive: true })) {
    if (entry.isDirectory()) continue;
    const from = join(entry.parentPath, entry.name);
    await layFile(join(target, relative(folder, from)), from, modeOf(entry.name, (await stat(from)).mode));
  }
}

/**
 * Chromium's sandbox needs its helper to belong to root and to run as root wherever ordinary users build no sandbox
 * of their own. A library is read and never run.
 */
function modeOf(name: string, mode: number): number {
  if (name === "chrome-sandbox") return 0o4755;
  const isProgram = (mode & 0o111) !== 0 && !/\.(?:so(?:\.\d+)*|node)$/.test(name);
  return isProgram ? 0o755 : 0o644;
}

async function layIcons(theme: string): Promise<void> {
  const drawn = join(projectFolder, "resources/icons");
  for (const name of await readdir(join(drawn, "linux"))) {
    const target = join(theme, basename(name, ".png"), "apps/tapeline.png");
    await layFile(target, join(drawn, "linux", name), 0o644);
  }
  await layFile(join(theme, "scalable/apps/tapeline.svg"), join(drawn, "tapeline.svg"), 0o644);
}

/** Our own terms where Debian asks for them (Policy 12.5), and beside them links to everybody else's. */
async function layLicences(root: string, folder: string): Promise<void> {
  const own = await readFile(join(folder, "LICENSE.tapeline.txt"), "utf8");
  await layText(join(root, docFolder, "copyright"), `${own}\n${installWords.en.terms}\n`);
  for (const name of ["THIRD-PARTY-NOTICES.txt", "LICENSE.electron.txt", "LICENSES.chromium.html"]) {
    await linkTo(join(root, docFolder, name), join(root, programFolder, name));
  }
}

async function layFile(target: string, from: string, mode: number): Promise<void> {
  await makeFolder(dirname(target));
  await copyFile(from, target);
  await chmod(target, mode);
}

async function layText(target: string, text: string): Promise<void> {
  await makeFolder(dirname(target));
  await writeFile(target, text);
  await chmod(target, 0o644);
}

async function linkTo(link: string, target: string): Promise<void> {
  await makeFolder(dirname(link));
  await symlink(relative(dirname(link), target), link);
}

/** Makes each folder on the way by itself, since a mode that is asked for is taken from by the umask. */
async function makeFolder(folder: string): Promise<void> {
  const first = await mkdir(folder, { recursive: true });
  if (first === undefined) return;
  for (let made = folder; made.length >= first.length; made = dirname(made)) await chmod(made, 0o755);
}
