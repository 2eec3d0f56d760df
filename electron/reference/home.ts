import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { sentence } from "../domain/words.ts";
import { NothingToMerge } from "./nothing.ts";

/** The folder in which a merge keeps what it checked, with a place for what it needs meanwhile. */
export interface Home {
  readonly folder: string;
  readonly working: string;
  /** Lets others in, and deletes what nobody asked to keep. */
  leave(): Promise<void>;
}

/**
 * Takes a folder for this process alone, which is made where it is missing; null: one that is deleted at the end.
 * @throws NothingToMerge when another process has it
 */
export async function openHome(kept: string | null): Promise<Home> {
  const folder = kept ?? (await mkdtemp(join(tmpdir(), "tapeline-reference-")));
  await mkdir(folder, { recursive: true });
  await requireOwn(folder);
  const lock = join(folder, "in-use");
  await takeLock(lock, folder);
  const working = join(folder, "working");
  await rm(working, { recursive: true, force: true });
  await mkdir(working);
  return {
    ...{ folder, working },
    async leave() {
      await rm(kept === null ? folder : working, { recursive: true, force: true });
      await rm(lock, { force: true });
    },
  };
}

/**
 * What is kept may be deleted at any time, and is when it is damaged: so nothing else may lie beside it.
 * @throws NothingToMerge when something does
 */
async function requireOwn(folder: string): Promise<void> {
  const stranger = (await readdir(folder)).find((name) => !isOurs(name));
  if (stranger !== undefined)
    throw new NothingToMerge(sentence("references.notOurs", { path: folder, name: stranger }));
}

function isOurs(name: string): boolean {
  // Some systems leave files of their own in every folder that somebody looks into.
  return /^(in-use|working|files|kinds|sums|quarter=.*|\..*|Thumbs\.db|desktop\.ini)$/.test(name);
}

/** Writes this process's number into a new file; one of a process that is gone is taken over. */
async function takeLock(lock: string, folder: string): Promise<void> {
  try {
    await writeFile(lock, String(process.pid), { flag: "wx" });
  } catch (error) {
    if (!(error instanceof Error && "code" in error && error.code === "EEXIST")) throw error;
    const holder = Number(await readFile(lock, "utf8"));
    if (holder !== process.pid && isRunning(holder)) {
      throw new NothingToMerge(sentence("references.inUse", { path: folder }));
    }
    await rm(lock, { force: true });
    await takeLock(lock, folder);
  }
}

function isRunning(holder: number): boolean {
  if (!Number.isInteger(holder) || holder <= 0) return false;
  try {
    process.kill(holder, 0);
    return true;
  } catch (error) {
    // Somebody else's process is one, too.
    return error instanceof Error && "code" in error && error.code === "EPERM";
  }
}
