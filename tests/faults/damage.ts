import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync, truncateSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { isDeepStrictEqual } from "node:util";
import { say } from "../../electron/api/door/words.ts";
import { unpackBackup } from "../../electron/backups/file.ts";
import { headersIn } from "../../electron/backups/folder.ts";
import { restoreStore } from "../../electron/backups/restore.ts";
import { openStore } from "../../electron/store/connection/open.ts";
import { StoreRefused } from "../../electron/store/connection/refused.ts";
import { dump } from "../store/hall.ts";
import { type Book, dropBook, live, newBook } from "./lives.ts";
import { chanceOf } from "./orders.ts";

type Chance = () => number;
type Rows = Map<string, unknown[]>;

/** A store before it is damaged: closed as a user closes it, or as a crash leaves it with its log. */
interface Sound {
  readonly folder: string;
  readonly rows: Rows;
}

export interface DamageToll {
  /** Opened, and every row of every table as it was: the damage struck nothing that is kept. */
  readonly opened: number;
  /** Refused, by reason; each with a sentence, and each repaired from the newest backup, every row compared. */
  readonly refused: Record<string, number>;
  /** What must never be, with how it was damaged. */
  readonly wrong: readonly string[];
}

const pageBytes = 4096;
const store = "tapeline.sqlite";

/** Damages copies of a store in so many ways, and opens each. */
export async function damaged(times: number, seed: number): Promise<DamageToll> {
  const chance = chanceOf(seed);
  const books = [newBook(), newBook()];
  const toll = { opened: 0, refused: {} as Record<string, number>, wrong: [] as string[] };
  try {
    const sounds = [
      await closedStore(books[0] ?? newBook(), seed),
      await crashedStore(books[1] ?? newBook(), seed),
    ];
    for (let index = 0; index < times; index += 1) {
      const sound = sounds[index % 2];
      if (sound !== undefined) await once(sound, chance, toll);
    }
    return toll;
  } finally {
    for (const book of books) dropBook(book);
  }
}

async function closedStore(book: Book, seed: number): Promise<Sound> {
  await live(book, { seed, entries: 160, athletes: 40 });
  return { folder: book.folder, rows: rowsOf(book.folder) };
}

/** Killed at rest after more than an orderly end has seen, so that file and log both hold something that was answered. */
async function crashedStore(book: Book, seed: number): Promise<Sound> {
  await live(book, { seed: seed + 1, entries: 100, athletes: 40 });
  for (let tries = 2; tries < 12; tries += 1) {
    await live(book, { seed: seed + tries, entries: 60, athletes: 40, killAtRest: true });
    const log = join(book.folder, `${store}-wal`);
    if (existsSync(log) && readFileSync(log).length > 12 * pageBytes) break;
  }
  return { folder: book.folder, rows: rowsOf(book.folder) };
}

function rowsOf(folder: string): Rows {
  return inCopy(folder, (copy) => {
    const opened = openStore({ file: join(copy, store) });
    const rows = dump(opened.db);
    opened.close();
    return rows;
  });
}

function inCopy<Result>(folder: string, work: (copy: string) => Result): Result {
  const copy = mkdtempSync(join(tmpdir(), "tapeline-damaged-"));
  cpSync(folder, copy, { recursive: true });
  const done = () => rmSync(copy, { recursive: true, force: true });
  const result = work(copy);
  if (result instanceof Promise) return result.finally(done) as Result;
  done();
  return result;
}

function once(sound: Sound, chance: Chance, toll: Mutable<DamageToll>): Promise<void> {
  return inCopy(sound.folder, async (copy) => {
    const how = harm(copy, chance);
    const outcome = tryOpening(copy, sound);
    if (outcome === "same") toll.opened += 1;
    else if (outcome instanceof StoreRefused) {
      toll.refused[outcome.reason] = (toll.refused[outcome.reason] ?? 0) + 1;
      const wrong = await repair(copy, outcome);
      if (wrong !== null) toll.wrong = [...toll.wrong, `${how}: ${wrong}`];
    } else toll.wrong = [...toll.wrong, `${how}: ${outcome}`];
  });
}

type Mutable<Type> = { -readonly [Key in keyof Type]: Type[Key] };

function tryOpening(copy: string, { rows }: Sound): "same" | StoreRefused | string {
  try {
    const opened = openStore({ file: join(copy, store) });
    const same = isDeepStrictEqual(dump(opened.db), rows);
    opened.close();
    return same ? "same" : "opened, and rows are not as they were";
  } catch (error) {
    if (error instanceof StoreRefused) return error;
    return `neither opened nor refused: ${error instanceof Error ? error.stack : String(error)}`;
  }
}

/** Goes back to the newest backup, as the page does that explains; what is wrong then, or null. */
async function repair(copy: string, refused: StoreRefused): Promise<string | null> {
  const sentence = say(refused.sentence);
  if (!/^[A-Z].*Nothing was changed\.$/.test(sentence)) return `no clear sentence: ${sentence}`;
  const backups = join(copy, "backups");
  const [newest] = await headersIn(backups);
  if (newest === undefined) return "no backup to go back to";
  const unpacked = await unpackBackup(join(backups, newest.name), null);
  const file = join(copy, store);
  const aside = restoreStore({ file }, unpacked.store, new Date("2026-11-14T12:00:00Z"));
  const opened = openStore({ file });
  const rows = dump(opened.db);
  opened.close();
  if (rows.get("attempt")?.length !== unpacked.header.holding.attempts)
    return "the backup's rows are not all there";
  return aside !== null || refused.reason === "gone" ? null : "what was there was not set aside";
}

/** Damages one file of a store; says how. */
function harm(copy: string, chance: Chance): string {
  const log = join(copy, `${store}-wal`);
  const both =
    existsSync(log) && readFileSync(log).length > 0 ? [join(copy, store), log] : [join(copy, store)];
  const file = both[Math.floor(chance() * both.length)] ?? join(copy, store);
  const bytes = readFileSync(file);
  const [name, harmed] = ways[Math.floor(chance() * ways.length)]?.(bytes, chance) ?? ["nothing", bytes];
  if (harmed === null) truncateSync(file, 0);
  else writeFileSync(file, harmed);
  return `${file.endsWith("-wal") ? "log" : "file"}, ${name}`;
}

const at = (chance: Chance, length: number) => Math.floor(chance() * length);

const ways: readonly ((bytes: Buffer, chance: Chance) => [string, Buffer | null])[] = [
  (bytes, chance) => flipped(bytes, chance, 1),
  (bytes, chance) => flipped(bytes, chance, 1),
  (bytes, chance) => flipped(bytes, chance, 1 + at(chance, 40)),
  (bytes, chance) => filled(bytes, chance, () => 0),
  (bytes, chance) => filled(bytes, chance, () => at(chance, 256)),
  (bytes, chance) => {
    const length = at(chance, bytes.length);
    return [`cut at ${length}`, length === 0 ? null : bytes.subarray(0, length)];
  },
  (bytes, chance) => {
    const pages = at(chance, Math.floor(bytes.length / pageBytes));
    return [`cut after ${pages} pages`, pages === 0 ? null : bytes.subarray(0, pages * pageBytes)];
  },
  (bytes, chance) => swapped(bytes, chance),
  (bytes) => ["gone to zero bytes", bytes.length > 0 ? null : bytes],
];

function flipped(bytes: Buffer, chance: Chance, bits: number): [string, Buffer] {
  const places = Array.from({ length: bits }, () => at(chance, bytes.length * 8));
  for (const bit of places) bytes.writeUInt8(bytes.readUInt8(bit >> 3) ^ (1 << (bit & 7)), bit >> 3);
  return [`bits ${places.join(" ")} flipped`, bytes];
}

function filled(bytes: Buffer, chance: Chance, value: () => number): [string, Buffer] {
  const page = at(chance, Math.ceil(bytes.length / pageBytes));
  const to = Math.min(bytes.length, (page + 1) * pageBytes);
  for (let each = page * pageBytes; each < to; each += 1) bytes.writeUInt8(value(), each);
  return [`page ${page} filled`, bytes];
}

function swapped(bytes: Buffer, chance: Chance): [string, Buffer] {
  const count = Math.floor(bytes.length / pageBytes);
  const [a, b] = [at(chance, count) * pageBytes, at(chance, count) * pageBytes];
  const kept = Buffer.from(bytes.subarray(a, a + pageBytes));
  bytes.copy(bytes, a, b, b + pageBytes);
  kept.copy(bytes, b);
  return [`pages at ${a} and ${b} swapped`, bytes];
}
