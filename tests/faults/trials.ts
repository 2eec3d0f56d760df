import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Faults, onFailingDisk, onSmallDisk } from "./disk.ts";
import { type Book, dropBook, judge, type Life, live, newBook } from "./lives.ts";
import { chanceOf } from "./orders.ts";
import type { Started } from "./starting.ts";

/** What came of many faults of one kind. */
export interface Toll {
  /** Faults that struck: kills, cuts, lives with failures. */
  readonly faults: number;
  /** Entries answered with "saved" that were then held to it. */
  readonly saved: number;
  /** What was wrong after a fault, with the fault's number; empty when all is well. */
  readonly wrong: readonly string[];
  readonly refused: ReadonlyMap<string, number>;
}

/** So many lives on one store, then a new one: stores that have been through much, and young ones. */
const usualLives = 20;

async function suffer(
  lives: number,
  lifeOf: (book: Book, index: number) => Life,
  struck: (code: number | null, signal: string | null) => boolean,
  livesAStore = usualLives,
): Promise<Toll> {
  const wrong: string[] = [];
  const refused = new Map<string, number>();
  let [faults, saved] = [0, 0];
  let book = newBook();
  function close(): void {
    for (const [key, count] of book.refused) refused.set(key, (refused.get(key) ?? 0) + count);
    dropBook(book);
  }
  for (let index = 0; index < lives; index += 1) {
    if (index > 0 && index % livesAStore === 0) {
      close();
      book = newBook();
    }
    const ended = await live(book, lifeOf(book, index));
    saved += ended.saved;
    if (struck(ended.code, ended.signal)) faults += 1;
    else if (!ended.closed) wrong.push(`${index}: ended with ${ended.code}: ${ended.complaint}`);
    wrong.push(...judge(book).map((each) => `${index}: ${each}`));
  }
  close();
  return { faults, saved, wrong, refused };
}

/** Ends the process that enters with SIGKILL, at random. */
export function killed(times: number, seed: number): Promise<Toll> {
  const chance = chanceOf(seed);
  // Young stores often, and in the middle of whatever it does then.
  const life = (_book: Book, index: number) => ({
    seed: seed + index,
    killAfter: { saved: Math.floor(chance() ** 2 * 400), ms: chance() * 5 },
  });
  return suffer(times, life, (_code, signal) => signal === "SIGKILL");
}

/** Takes the power, so that what was not synced is lost: all of it every third time, else some by chance. */
export function cutOff(
  library: string,
  times: number,
  seed: number,
  synchronous: "FULL" | "NORMAL" = "FULL",
): Promise<Toll> {
  const chance = chanceOf(seed);
  const life = (book: Book, index: number): Life => {
    // Every fifth in a start, or in the making of a store; with NORMAL always after something was entered.
    const early = index % 5 === 4 ? 1 + chance() * 200 : 250 + chance() * 700;
    const cutAt = Math.floor(synchronous === "NORMAL" ? 500 + chance() * 500 : early);
    const faults: Faults = { cutAt, seed: index % 3 === 0 ? 0 : seed + index };
    return { seed: seed + index, synchronous, environment: onFailingDisk(library, book.folder, faults) };
  };
  // A store that has lost something stays so: each cut that must be noticed gets a store of its own.
  return suffer(times, life, (code) => code === 137, synchronous === "NORMAL" ? 1 : usualLives);
}

/** Ends a process that is in checkpoints most of the time: by SIGKILL, or by the power going. */
export function cutInCheckpoints(library: string, times: number, seed: number): Promise<Toll> {
  const chance = chanceOf(seed);
  const life = (book: Book, index: number): Life => {
    const common = { seed: seed + index, checkpoints: true };
    if (index % 2 === 0)
      return { ...common, killAfter: { saved: Math.floor(chance() * 40), ms: chance() * 60 } };
    const faults: Faults = {
      cutAt: Math.floor(250 + chance() * 700),
      seed: index % 3 === 0 ? 0 : seed + index,
    };
    return { ...common, environment: onFailingDisk(library, book.folder, faults) };
  };
  return suffer(times, life, (code, signal) => signal === "SIGKILL" || code === 137);
}

/** Lets syncs fail with EIO, or writes with ENOSPC, some in a row, while entering goes on to an orderly end. */
export function failing(library: string, times: number, seed: number, kind: "sync" | "write"): Promise<Toll> {
  const chance = chanceOf(seed);
  const life = (book: Book, index: number): Life => {
    // The first life makes the store in peace; `born` makes it otherwise.
    const at = 150 + Math.floor(chance() * 300);
    const count = 1 + Math.floor(chance() * 40);
    const faults: Faults =
      kind === "sync"
        ? { failSyncAt: Math.floor(at / 4), times: count }
        : { failWriteAt: at, times: count * 5 };
    const environment = index % usualLives === 0 ? {} : onFailingDisk(library, book.folder, faults);
    return { seed: seed + index, entries: 120, environment };
  };
  return suffer(times + 1, life, () => false);
}

/** Lets writes fail while a store is made: it is there whole or not at all, and the next start goes on in peace. */
export async function born(library: string, times: number, seed: number): Promise<Toll> {
  const chance = chanceOf(seed);
  const wrong: string[] = [];
  let [faults, saved] = [0, 0];
  for (let index = 0; index < times; index += 1) {
    const book = newBook();
    const environment = onFailingDisk(library, book.folder, {
      failWriteAt: 1 + Math.floor(chance() * 400),
      times: 1 + Math.floor(chance() * 200),
    });
    const ended = await live(book, { seed: seed + index, entries: 5, environment });
    if (!ended.closed) faults += 1;
    const again = await live(book, { seed: seed + index, entries: 5 });
    saved += again.saved;
    if (!again.closed) wrong.push(`${index}: ended with ${again.code}: ${again.complaint}`);
    wrong.push(...judge(book).map((each) => `${index}: ${each}`));
    dropBook(book);
  }
  return { faults, saved, wrong, refused: new Map() };
}

/** Makes a store on a disk that is too small for it, and goes on with what is left there on one with room. */
export async function bornInNoRoom(bytes: number, seed: number): Promise<Toll> {
  const book = newBook();
  const after = mkdtempSync(join(tmpdir(), "tapeline-born-"));
  try {
    const first = await live(book, { seed, entries: 5, through: onSmallDisk(book.folder, bytes, after) });
    const again = await live({ ...book, folder: after }, { seed, entries: 5 });
    const bad = again.closed ? [] : [`ended with ${again.code}: ${again.complaint}`];
    const wrong = [...bad, ...judge({ ...book, folder: after })];
    return { faults: first.closed ? 0 : 1, saved: again.saved, wrong, refused: book.refused };
  } finally {
    dropBook(book);
    rmSync(after, { recursive: true, force: true });
  }
}

/** Fills a file system of its own to the last byte while entering goes on. */
export async function filledUp(bytes: number, seed: number): Promise<Toll> {
  const book = newBook();
  const after = mkdtempSync(join(tmpdir(), "tapeline-filled-"));
  try {
    const through = onSmallDisk(book.folder, bytes, after);
    const ended = await live(book, { seed, entries: 600, fills: true, through });
    const bad = ended.closed ? [] : [`ended with ${ended.code}: ${ended.complaint}`];
    const wrong = [...bad, ...judge({ ...book, folder: after })];
    return { faults: book.refused.get("disk.full") ?? 0, saved: ended.saved, wrong, refused: book.refused };
  } finally {
    dropBook(book);
    rmSync(after, { recursive: true, force: true });
  }
}

/** A start on a disk filled to the last byte, after an orderly end or a kill: what it says of itself. */
export function startedFull(bytes: number, ending: "closed" | "killed"): Started {
  const folder = mkdtempSync(join(tmpdir(), "tapeline-start-"));
  const after = mkdtempSync(join(tmpdir(), "tapeline-started-"));
  try {
    const [command = "", ...rest] = onSmallDisk(folder, bytes, after);
    const child = [process.execPath, new URL("starting.ts", import.meta.url).pathname, folder, ending];
    const { stdout, stderr } = spawnSync(command, [...rest, ...child], { encoding: "utf8" });
    if (stdout === "") throw new Error(stderr);
    return JSON.parse(stdout) as Started;
  } finally {
    for (const each of [folder, after]) rmSync(each, { recursive: true, force: true });
  }
}
