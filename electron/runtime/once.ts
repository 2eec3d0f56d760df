import { existsSync } from "node:fs";
import { mkdir, readdir, readFile, rename, rm, stat, utimes, writeFile } from "node:fs/promises";
import { basename, dirname, join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import type { PrintLine } from "./host.ts";

const BEAT_MS = 2_000;
/** Age in ms at which an untouched lock belongs to a dead process, whatever its number says. */
const STALE_MS = 30_000;
const POLL_MS = 250;

/**
 * Makes `folder` with `fill`, exactly once and all or nothing: `fill` works in a folder beside it, which
 * takes its final name only when it is complete. An interrupted run leaves nothing that looks finished, and
 * a second process that wants the same folder waits for the first.
 */
export async function makeOnce(
  folder: string,
  log: PrintLine,
  fill: (unfinished: string) => Promise<void>,
): Promise<void> {
  if (existsSync(folder)) return;
  await holdingLock(join(dirname(folder), "lock"), log, async () => {
    if (existsSync(folder)) return;
    await removeLeftovers(folder);
    const unfinished = `${folder}.unfinished-${process.pid}`;
    await mkdir(unfinished);
    try {
      await fill(unfinished);
      await rename(unfinished, folder);
    } catch (error) {
      await rm(unfinished, { recursive: true, force: true });
      // Another process that took over a stale lock may have finished first: its folder is as good.
      if (!existsSync(folder)) throw error;
    }
  });
}

async function removeLeftovers(folder: string): Promise<void> {
  const prefix = `${basename(folder)}.unfinished-`;
  for (const name of await readdir(dirname(folder))) {
    if (name.startsWith(prefix)) await rm(join(dirname(folder), name), { recursive: true, force: true });
  }
}

/** Runs `work` while holding the lock file; waits first while another living process holds it. */
export async function holdingLock<T>(lockFile: string, log: PrintLine, work: () => Promise<T>): Promise<T> {
  await mkdir(dirname(lockFile), { recursive: true });
  for (let told = false; !(await takeLock(lockFile)); told = true) {
    if (!told) log("Another Tapeline process is preparing the runtime. Waiting for it.");
    await sleep(POLL_MS);
  }
  const beat = setInterval(() => {
    // A failed touch is harmless: at worst a waiting process takes over, and renaming keeps that safe.
    utimes(lockFile, new Date(), new Date()).catch(() => {});
  }, BEAT_MS);
  try {
    return await work();
  } finally {
    clearInterval(beat);
    await rm(lockFile, { force: true });
  }
}

async function takeLock(lockFile: string): Promise<boolean> {
  if (await holderIsGone(lockFile)) await rm(lockFile, { force: true });
  try {
    await writeFile(lockFile, String(process.pid), { flag: "wx" });
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "EEXIST") return false;
    throw error;
  }
}

async function holderIsGone(lockFile: string): Promise<boolean> {
  try {
    const holder = Number(await readFile(lockFile, "utf8"));
    const age = Date.now() - (await stat(lockFile)).mtimeMs;
    return age > STALE_MS || (holder > 0 && !isAlive(holder));
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "ENOENT") return false;
    throw error;
  }
}

function isAlive(pid: number): boolean {
  try {
    return process.kill(pid, 0);
  } catch (error) {
    // EPERM: it lives, but belongs to somebody else.
    return (error as NodeJS.ErrnoException).code === "EPERM";
  }
}
