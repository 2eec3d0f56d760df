import { copyFileSync, existsSync, readFileSync, readlinkSync } from "node:fs";
import { basename, join } from "node:path";
import { desktopEntryText } from "../../resources/packaging/debian/desktop-entry.ts";
import { programProcesses } from "./processes.ts";
import {
  closeProgram,
  dataFolder,
  daysIn,
  missingOfSandbox,
  modeIn,
  type Sandbox,
  sandboxes,
  startProgram,
  user,
  waitForPages,
} from "./program.ts";
import { inRoot, layRoot, putFile, type Root } from "./root.ts";
import { keepPicture, makeScreen, type Screen, untilTrue } from "./screen.ts";

/** What is tried, and where. */
export interface Trial {
  readonly deb: string;
  /** The folder of the system that it is installed on, which stays as it is. */
  readonly base: string;
  /** A folder in memory, for everything that is written. */
  readonly work: string;
  /** Where pictures of the windows are kept, if anywhere. */
  readonly pictures: string | undefined;
  /** Tells that something was seen to hold. */
  readonly tell: (line: string) => void;
}

const title = "Trial day";

/** Installs, starts, uses, removes, installs again and purges the program. Rejects at the first thing that is wrong. */
export async function tryInstalling(trial: Trial): Promise<void> {
  const { program, screen } = await prepare(trial);
  await install(trial, program);
  for (const sandbox of Object.keys(sandboxes) as Sandbox[]) {
    await checksItself(trial, program, screen, sandbox);
    await isKept(trial, program, screen, sandbox);
  }
  await makesADay(trial, program, screen);
  const files = await filesOf(program);
  await leaves(trial, program, files, "remove");
  await install(trial, program);
  await findsTheDay(trial, program, screen);
  await leaves(trial, program, files, "purge");
}

/** Two systems on one base: the screen's packages must stand in for nothing that the program's package forgot. */
async function prepare({ base, work, deb }: Trial): Promise<{ program: Root; screen: Screen }> {
  const shared = await layRoot(work, "shared", [base]);
  putFile(shared, "etc/resolv.conf", readFileSync("/etc/resolv.conf", "utf8"));
  // No package starts a service in a trial.
  putFile(shared, "usr/sbin/policy-rc.d", "#!/bin/sh\nexit 101\n", 0o755);
  await inRoot(shared, ["apt-get", "update"]);
  const below = [shared.written, base];
  const program = await layRoot(work, "program", below);
  await inRoot(program, ["useradd", "--create-home", user]);
  same(await placesNaming(program), [], "what is there before anything is installed");
  copyFileSync(deb, join(program.folder, "tmp", basename(deb)));
  return { program, screen: await makeScreen(await layRoot(work, "screen", below), program) };
}

async function install({ deb, tell }: Trial, root: Root): Promise<void> {
  await inRoot(root, ["apt-get", "install", "-y", "--no-install-recommends", `/tmp/${basename(deb)}`]);
  // Nothing is printed where every file is as it was packed.
  same(await inRoot(root, ["dpkg", "--verify", "tapeline"]), "", "the installed files");
  same(modeIn(root, "usr/lib/tapeline/chrome-sandbox"), "4755 0:0", "chrome-sandbox");
  const writable = ["find", "/usr/lib/tapeline", "-not", "-type", "l", "-perm", "/022"];
  same(await inRoot(root, writable), "", "what others may write to");
  same(readlinkSync(join(root.folder, "usr/bin/tapeline")), "../lib/tapeline/tapeline", "the command");
  const linked = await inRoot(root, ["sh", "-c", "cd /usr/lib/tapeline && ldd tapeline *.so chrome-sandbox"]);
  same(linked.match(/.*not found.*/g) ?? [], [], "libraries that are missing");
  tell("apt installs it with all the libraries that it needs");
}

async function checksItself(trial: Trial, root: Root, screen: Screen, sandbox: Sandbox): Promise<void> {
  const running = startProgram(root, screen, ["--self-check", ...sandboxes[sandbox]]);
  const code = await running.ended;
  const lines = running.printed().split("\n").filter(Boolean);
  if (code !== 0) throw new Error(`The self-check ended with ${code}:\n${running.printed()}`);
  same(lines.filter((line) => line.startsWith("ok ")).length, 9, "the self-check's steps");
  trial.tell(`an ordinary user's self-check goes well (sandbox: ${sandbox})`);
  // Without what Chromium says about a system that has neither a graphics card nor a desktop.
  for (const line of lines.filter((line) => /^(?:ok|Everything) /.test(line))) console.log(`        ${line}`);
}

async function isKept(trial: Trial, root: Root, screen: Screen, sandbox: Sandbox): Promise<void> {
  const running = startProgram(root, screen, sandboxes[sandbox]);
  await waitForPages(running);
  keepPicture(trial.pictures, `first-start-${sandbox}`, await screen.settled());
  // Not before something is drawn: a process shuts itself in after it has begun.
  same(missingOfSandbox(programProcesses(), sandbox), [], "what is missing of the sandbox");
  const entry = desktopEntryText();
  const [, windowClass] = /^StartupWMClass=(.*)$/m.exec(entry) ?? [];
  same((await screen.windowClass())[1], windowClass, "the window's class");
  await closeProgram(running);
  trial.tell(`its pages are drawn by processes that can reach nothing (sandbox: ${sandbox})`);
}

/** The stops of the keyboard on the first screen up to the field for the day's name. */
const stopsToName = 4;

/** A day of one's own, by the keyboard: its name, then Enter. */
async function makesADay(trial: Trial, root: Root, screen: Screen): Promise<void> {
  const running = startProgram(root, screen, []);
  await waitForPages(running);
  await screen.settled();
  await screen.enter(stopsToName, title);
  await untilTrue("the day is in the store", () => daysIn(root).includes(title));
  keepPicture(trial.pictures, "day", await screen.settled());
  await closeProgram(running);
  trial.tell(`a day is made by its window and lies in ${dataFolder}`);
}

async function findsTheDay(trial: Trial, root: Root, screen: Screen): Promise<void> {
  const running = startProgram(root, screen, []);
  await waitForPages(running);
  keepPicture(trial.pictures, "installed-again", await screen.settled());
  await closeProgram(running);
  same(daysIn(root), [title], "the days after it was installed again");
  trial.tell("installed again, it opens what was there");
}

/** The files that the package brought, without the folders it shares. */
async function filesOf(root: Root): Promise<string[]> {
  const listed = (await inRoot(root, ["dpkg", "--listfiles", "tapeline"])).split("\n").filter(Boolean);
  const own = listed.filter((name) => name.includes("tapeline"));
  same(own.length > 30, true, "that the package lists its files");
  return own;
}

async function leaves(
  { tell }: Trial,
  root: Root,
  files: readonly string[],
  how: "remove" | "purge",
): Promise<void> {
  const before = await sumsOfHome(root);
  await inRoot(root, ["apt-get", how, "-y", "tapeline"]);
  same(
    files.filter((name) => existsSync(join(root.folder, name))),
    [],
    "files that were left",
  );
  // Neither in the places of other packages, such as menus and icons.
  same(await placesNaming(root), [], "what else was left");
  same(await sumsOfHome(root), before, "the user's data");
  same(daysIn(root), [title], "the days in the store");
  tell(`apt ${how} takes every file of the package, and leaves every file of the user's`);
}

/** Whatever is called after the program where packages put things. Apt's own lists and logs name what was there. */
async function placesNaming(root: Root): Promise<string[]> {
  const search =
    "find /etc /opt /usr /var ( -path /var/log -o -path /var/cache ) -prune -o -iname *tapeline* -print";
  return (await inRoot(root, search.split(" "))).split("\n").filter(Boolean);
}

async function sumsOfHome(root: Root): Promise<string> {
  return inRoot(root, ["sh", "-c", `find ${dataFolder} -type f -exec sha256sum {} + | sort -k 2`]);
}

function same(found: unknown, wanted: unknown, what: string): void {
  const [one, other] = [JSON.stringify(found), JSON.stringify(wanted)];
  if (one !== other) throw new Error(`Not as it should be: ${what} should be ${other} and is ${one}.`);
}
