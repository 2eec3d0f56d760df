import { copyFileSync, existsSync, mkdtempSync, readdirSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { DatabaseSync } from "node:sqlite";
import { type Process, programProcesses } from "./processes.ts";
import { type Root, type Running, startInRoot } from "./root.ts";
import { type Screen, untilTrue } from "./screen.ts";

/** Who starts the program: an ordinary user of the trial's system, with no right beyond that. */
export const user = "table";

/** Where the program keeps what was entered, as README.md says. */
export const dataFolder = `/home/${user}/.config/tapeline`;

/** Chromium's two ways to build its sandbox on Linux. The second is for systems that forbid the first to users. */
export const sandboxes = {
  namespaces: [],
  helper: ["--disable-namespace-sandbox"],
} as const;
export type Sandbox = keyof typeof sandboxes;

/** Starts the installed program as the user does, from the PATH, with its sandbox. */
export function startProgram(root: Root, screen: Screen, words: readonly string[]): Running {
  const env = { DISPLAY: screen.name, LANG: "C.UTF-8", LANGUAGE: "en", PATH: "/usr/local/bin:/usr/bin:/bin" };
  return startInRoot(root, ["tapeline", ...words], { user, env });
}

/** Waits until the program has a process that draws pages. Rejects with what it printed when it ends before. */
export async function waitForPages(running: Running): Promise<void> {
  await untilTrue("the program has a process that draws", () => {
    if (running.child.exitCode !== null) throw new Error(`The program ended: ${running.printed()}`);
    return programProcesses().some(({ kind }) => kind === "renderer");
  });
}

/** Closes the program as the system does at the end of a session, and waits until all of it is gone. */
export async function closeProgram(running: Running): Promise<void> {
  const main = programProcesses().find(isMain);
  if (main === undefined) throw new Error(`The program is not there: ${running.printed()}`);
  process.kill(main.id, "SIGTERM");
  await untilTrue("the program has ended", () => programProcesses().length === 0);
  await running.ended;
}

function isMain({ kind }: Process): boolean {
  return kind === "";
}

/** What keeps the processes that draw pages from the machine. Empty when all of it is there. */
export function missingOfSandbox(processes: readonly Process[], sandbox: Sandbox): string[] {
  const main = processes.find(isMain);
  const renderers = processes.filter(({ kind }) => kind === "renderer");
  const helpers = processes.filter(({ program }) => program.endsWith("/chrome-sandbox"));
  const misses: string[] = [];
  const hold = (holds: boolean, miss: string) => void (holds || misses.push(miss));
  hold(main !== undefined && main.actsAs >= 1000, "the main process is an ordinary user's");
  hold(renderers.length > 0, "there is a process that draws");
  hold(
    processes.every(({ words }) => !words.includes("--no-sandbox")),
    "nobody turned the sandbox off",
  );
  for (const { id, ...each } of renderers) {
    hold(each.seccomp === 2, `${id}: its system calls are filtered`);
    hold(each.noNewPrivileges, `${id}: it can gain no rights`);
    hold(each.capabilities === 0n, `${id}: it has none of root's rights`);
    hold(each.processNamespace !== main?.processNamespace, `${id}: it sees no other process`);
    hold((each.userNamespace !== main?.userNamespace) === (sandbox === "namespaces"), `${id}: its users`);
  }
  hold(helpers.length > 0 === (sandbox === "helper"), "chrome-sandbox made the spaces where users may not");
  return misses;
}

/** The names of the days in the user's store, read from a copy: root must leave nothing of its own beside the store. */
export function daysIn(root: Root): string[] {
  const data = join(root.folder, dataFolder);
  if (!existsSync(join(data, "tapeline.sqlite"))) return [];
  const copies = mkdtempSync(join(tmpdir(), "tapeline-days-"));
  const parts = readdirSync(data).filter((name) => /^tapeline\.sqlite(?:-wal)?$/.test(name));
  for (const name of parts) copyFileSync(join(data, name), join(copies, name));
  const store = new DatabaseSync(join(copies, "tapeline.sqlite"));
  const rows = store.prepare("SELECT title FROM day ORDER BY id").all() as { title: string }[];
  store.close();
  rmSync(copies, { recursive: true });
  return rows.map(({ title }) => title);
}

/** Mode and owner of an installed file, as `4755 0:0`. */
export function modeIn(root: Root, name: string): string {
  const { mode, uid, gid } = statSync(join(root.folder, name));
  return `${(mode & 0o7777).toString(8)} ${uid}:${gid}`;
}
