import { spawn } from "node:child_process";
import { once } from "node:events";
import { cpSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { createInterface } from "node:readline";
import { setTimeout as wait } from "node:timers/promises";
import { isDeepStrictEqual } from "node:util";
import { findWrongMark } from "../../electron/store/connection/checks.ts";
import { openStore } from "../../electron/store/connection/open.ts";
import { marksOfDay, rebuildMarks } from "../../electron/store/tables/marks.ts";
import { connectionOf } from "../store/connection.ts";
import type { Orders, Said, Sent } from "./orders.ts";

/** All that the lives of one store said: what was sent, and what of it was answered with "saved". */
export interface Book {
  readonly folder: string;
  readonly sent: Map<string, Sent>;
  readonly saved: Set<string>;
  /** Sentences of refusals, and how often. */
  readonly refused: Map<string, number>;
}

/** A store to be, in a folder of its own; `in` is where, for a file system made for it. */
export function newBook(place = tmpdir()): Book {
  const folder = mkdtempSync(join(place, "tapeline-fault-"));
  return { folder, sent: new Map(), saved: new Set(), refused: new Map() };
}

export function dropBook({ folder }: Book): void {
  rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
}

export interface Life {
  readonly seed: number;
  readonly synchronous?: Orders["synchronous"];
  readonly entries?: number;
  readonly athletes?: number;
  /** Ends it with SIGKILL once it has done its entries and rests. */
  readonly killAtRest?: boolean;
  readonly fills?: boolean;
  readonly checkpoints?: boolean;
  /** For the process: the disk's faults. */
  readonly environment?: Readonly<Record<string, string>>;
  /** Ends it with SIGKILL after so many entries of this life were answered with "saved", and so many ms. */
  readonly killAfter?: { readonly saved: number; readonly ms: number };
  /** A command that the process is started by. */
  readonly through?: readonly string[];
}

export interface Ended {
  readonly code: number | null;
  readonly signal: NodeJS.Signals | null;
  /** Entries answered with "saved" in this life. */
  readonly saved: number;
  readonly closed: boolean;
  readonly complaint: string;
}

const entering = new URL("entering.ts", import.meta.url).pathname;

/** Lets one process enter on the book's store until it ends or is ended; notes all it says. */
export async function live(book: Book, life: Life): Promise<Ended> {
  const before = join(tmpdir(), `tapeline-before-${process.pid}-${life.seed}.jsonl`);
  writeFileSync(before, [...book.sent].map((each) => line(book, each)).join("\n"));
  const orders: Orders = {
    ...{ folder: book.folder, seed: life.seed, clients: 4, entries: life.entries ?? null, before },
    ...{ rests: life.killAtRest ?? false, fills: life.fills ?? false },
    checkpoints: life.checkpoints ?? false,
    ...{ synchronous: life.synchronous ?? "FULL", athletes: life.athletes ?? 150 },
  };
  const [command = "", ...rest] = [
    ...(life.through ?? []),
    process.execPath,
    entering,
    JSON.stringify(orders),
  ];
  const child = spawn(command, rest, {
    stdio: ["ignore", "pipe", "pipe"],
    env: { ...process.env, UV_USE_IO_URING: "0", ...life.environment },
  });
  let complaint = "";
  child.stderr.on("data", (text) => {
    complaint += text;
  });
  const told = { saved: 0, closed: false };
  const enough = note(book, child.stdout, told, life.killAfter?.saved ?? 0, () => child.kill("SIGKILL"));
  const gone = once(child, "close");
  if (life.killAfter !== undefined) {
    await Promise.race([enough, gone]);
    await wait(life.killAfter.ms);
    child.kill("SIGKILL");
  }
  const [code, signal] = (await gone) as [number | null, NodeJS.Signals | null];
  rmSync(before, { force: true });
  return { code, signal, complaint, ...told };
}

function line(book: Book, [id, sent]: [string, Sent]): string {
  return JSON.stringify({ sent, saved: book.saved.has(id) });
}

/** Resolves once `enough` entries are saved, or at the first thing said where none has to be; goes on noting. */
function note(
  book: Book,
  output: NodeJS.ReadableStream,
  told: { saved: number; closed: boolean },
  enough: number,
  onRest: () => void,
): Promise<void> {
  return new Promise((resolve) => {
    createInterface({ input: output }).on("line", (text) => {
      const said = read(text);
      if (said === undefined) return;
      if ("sent" in said) book.sent.set(said.sent.attempts[0]?.id ?? "", said.sent);
      if ("saved" in said) {
        book.saved.add(said.saved);
        told.saved += 1;
      }
      if ("refused" in said) book.refused.set(said.key, (book.refused.get(said.key) ?? 0) + 1);
      if ("rests" in said) onRest();
      if ("closed" in said) told.closed = true;
      if (told.saved >= enough) resolve();
    });
  });
}

/** A process that was killed may have left half a line. */
function read(text: string): Said | undefined {
  try {
    return JSON.parse(text) as Said;
  } catch {
    return undefined;
  }
}

/** What is wrong with the store after its lives, judged on a copy; an empty list when all is well. */
export function judge(book: Book): string[] {
  const copy = mkdtempSync(join(tmpdir(), "tapeline-judged-"));
  try {
    for (const name of readdirSync(book.folder).filter((each) => each.startsWith("tapeline.sqlite"))) {
      cpSync(join(book.folder, name), join(copy, name));
    }
    return judgeFile(book, join(copy, "tapeline.sqlite"));
  } finally {
    rmSync(copy, { recursive: true, force: true });
  }
}

interface Row {
  readonly id: string;
  readonly athleteId: number;
  readonly seen: string;
}

function judgeFile(book: Book, file: string): string[] {
  mkdirSync(book.folder, { recursive: true });
  let store: ReturnType<typeof openStore>;
  try {
    store = openStore({ file });
  } catch (error) {
    return [`not opened: ${error instanceof Error ? error.message : String(error)}`];
  }
  try {
    const rows = connectionOf(store.db)
      .prepare<[], Row>("SELECT id, athlete_id AS athleteId, seen FROM attempt")
      .all();
    const there = new Map(rows.map((row) => [row.id, row]));
    const wrong = findWrongMark(store.db, 1e9);
    return [
      ...(there.size === rows.length ? [] : ["an id is there twice"]),
      ...[...book.sent].flatMap(([id, sent]) => judgeEntry(sent, book.saved.has(id), there)),
      ...strangers(book, rows),
      ...(wrong === null ? [] : [wrong]),
      ...judgeRebuilt(store),
    ];
  } finally {
    store.close();
  }
}

/** Whole where it was saved; whole or not at all where no answer came. */
function judgeEntry(sent: Sent, saved: boolean, there: ReadonlyMap<string, Row>): string[] {
  const found = sent.attempts.filter(({ id, seen }) => {
    const row = there.get(id);
    return row?.athleteId === sent.athleteId && isDeepStrictEqual(JSON.parse(row.seen), seen);
  });
  if (found.length === sent.attempts.length || (found.length === 0 && !saved)) return [];
  return [`${saved ? "saved" : "sent"} and ${found.length} of ${sent.attempts.length} there`];
}

function strangers(book: Book, rows: readonly Row[]): string[] {
  const sent = new Set([...book.sent.values()].flatMap(({ attempts }) => attempts.map(({ id }) => id)));
  return rows.filter(({ id }) => !sent.has(id)).map(({ id }) => `nobody sent ${id}`);
}

function judgeRebuilt(store: ReturnType<typeof openStore>): string[] {
  const before = marksOfDay(store.db, 1);
  store.write(["attempts"], (db) => rebuildMarks(db));
  return isDeepStrictEqual(marksOfDay(store.db, 1), before) ? [] : ["marks differ from rebuilt marks"];
}
