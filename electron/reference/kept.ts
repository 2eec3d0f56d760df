import { mkdir } from "node:fs/promises";
import { join } from "node:path";
import type { AlikeMarks } from "../domain/reference/bundle.ts";
import type { Sentence } from "../domain/words.ts";
import {
  filesFolder,
  kindsFolder,
  mostBatches,
  reader,
  tidied,
  wholeBatches,
  writeBatch,
} from "./batches.ts";
import { allOf } from "./database.ts";
import { type Engine, quoted } from "./engine.ts";
import type { Stamp } from "./folder.ts";

/** A file that was looked at: what was found in it, as long as it is the same file. */
export interface Looked extends Stamp {
  readonly name: string;
  /** The content hash of the bundle in it, or the id of what somebody handed in; null: it was refused, as `refusal` says. */
  readonly bundle: string | null;
  /** The number by which its marks are kept, the same for the same `bundle`; null where that is. */
  readonly number: number | null;
  readonly refusal: Sentence | null;
}

/**
 * What was checked of the files that were sent, as Parquet files in batches: of batch n, `quarter=2026-Q3/n.parquet` for
 * each quarter with the marks of its bundles, `quarter=none/n.parquet` with what people handed in, `kinds/n.parquet` with
 * the kinds of marks that no batch before had, `files/n.parquet` with the files that were looked at, and `sums/n.sha256`
 * with the sums of all these. That one is written last. It makes the batch count, and those before it no longer for which
 * it stands (`since`); files of a batch that does not count are left by a process that was killed, and are deleted. So at
 * any moment the folder is as after some batch, and nothing is there twice.
 */
export interface Kept {
  /** What is known of a file of this name, whatever it is by now. */
  find(name: string): Looked | undefined;
  /**
   * Adds a file to the batch at hand, with the marks in it; marks that are kept already are not kept again. Returns what
   * is known of the file from now on.
   */
  add(looked: Omit<Looked, "number">, marks: readonly AlikeMarks[]): Looked;
  /** How many files are in the batch at hand. */
  readonly waiting: number;
  /** Writes the batch at hand whole, through to the disk. */
  flush(): Promise<void>;
  /** Puts many batches together when no file is left to look at. */
  close(): Promise<void>;
  /**
   * Waits until the engine has all that is kept: `kept_mark` with bundle and kind (their numbers), quarter (`noQuarter` of
   * what people handed in), low, high and marks, and `kept_kind` with kind, test, variant, fingerprint, category, age_band.
   */
  loaded(): Promise<void>;
}

const markColumns = `
  bundle INTEGER NOT NULL, kind INTEGER NOT NULL, quarter TEXT NOT NULL, low INTEGER, high INTEGER,
  marks INTEGER NOT NULL`;
const kindColumns = `
  kind INTEGER NOT NULL, test TEXT NOT NULL, variant TEXT NOT NULL, fingerprint TEXT NOT NULL,
  category TEXT NOT NULL, age_band TEXT NOT NULL`;
const tables = `
  CREATE TABLE kept_mark (${markColumns});
  CREATE TABLE kept_kind (${kindColumns});
  CREATE TABLE batch_mark (${markColumns});
  CREATE TABLE batch_kind (${kindColumns});
  CREATE TABLE batch_file (
    name TEXT NOT NULL, bytes BIGINT NOT NULL, changed TEXT NOT NULL, bundle TEXT, number INTEGER, refusal TEXT,
    reader TEXT NOT NULL, since INTEGER NOT NULL
  )`;
const batch = { marks: "batch_mark", kinds: "batch_kind" };
const all = { marks: "kept_mark", kinds: "kept_kind" };
/** Once a batch is on the disk. */
const takeBatch = `
  INSERT INTO kept_mark SELECT * FROM batch_mark;
  INSERT INTO kept_kind SELECT * FROM batch_kind;
  DELETE FROM batch_mark;
  DELETE FROM batch_kind`;

/** Opens what is kept in a folder, which is there; nobody else may have it open. */
export async function openKept(engine: Engine, folder: string): Promise<Kept> {
  for (const inside of [filesFolder, kindsFolder]) await mkdir(join(folder, inside), { recursive: true });
  await engine.run(tables);
  const batches = await wholeBatches(engine, folder);
  const there = await tidied(folder, batches);
  // Meanwhile files are looked at; a failure is told to whoever waits for it.
  const loaded = load(engine, "kept_mark", there.marks);
  loaded.catch(() => {});
  await load(engine, "kept_kind", there.kinds);
  const kinds = await kindsIn(engine);
  const numberOf = (mark: AlikeMarks): number => {
    const cells = kindCells(mark);
    const key = keyOf(cells);
    const before = kinds.get(key);
    if (before !== undefined) return before;
    const kind = kinds.size + 1;
    kinds.set(key, kind);
    newKinds.push([kind, ...cells]);
    return kind;
  };
  const known = await lookedAt(engine, folder, batches);
  const numbers = new Map<string, number>();
  for (const { bundle, number } of known.values()) {
    if (bundle !== null && number !== null) numbers.set(bundle, number);
  }
  let nextNumber = [...numbers.values()].reduce((most, number) => Math.max(most, number), 0) + 1;
  let next = Math.max(0, ...batches) + 1;
  let count = batches.length;
  let files: Looked[] = [];
  let marks: MarkCells[] = [];
  let newKinds: KindCells[] = [];
  return {
    find: (name) => known.get(name),
    add(found, told) {
      const { bundle } = found;
      const before = bundle === null ? null : numbers.get(bundle);
      const number = before === undefined ? nextNumber : before;
      const looked = { ...found, number };
      known.set(looked.name, looked);
      files.push(looked);
      if (bundle === null || before !== undefined) return looked;
      numbers.set(bundle, nextNumber);
      for (const each of told) marks.push(cellsOf(nextNumber, numberOf(each), each));
      nextNumber += 1;
      return looked;
    },
    get waiting() {
      return files.length;
    },
    async flush() {
      if (files.length === 0) return;
      await loaded;
      await engine.add("batch_mark", marks);
      await engine.add("batch_kind", newKinds);
      await write(files, batch, next);
      await engine.run(takeBatch);
      [files, marks, newKinds, next, count] = [[], [], [], next + 1, count + 1];
    },
    async close() {
      if (count <= mostBatches) return;
      await loaded;
      // One batch instead of all: every file of one costs each later merge something.
      await write([...known.values()], all, 1);
      await tidied(folder, [next]);
    },
    loaded: () => loaded,
  };

  /** Writes the batch `next`, which stands from then on for all from `since` on. */
  async function write(looked: readonly Looked[], from: typeof batch, since: number): Promise<void> {
    const at = (inside: string, query: string) => ({ path: `${inside}/${next}.parquet`, query });
    await engine.add(
      "batch_file",
      looked.map((each) => fileCells(each, since)),
    );
    const quarters = await allOf(
      engine.rows<{ quarter: string }>(`SELECT DISTINCT quarter FROM ${from.marks} ORDER BY quarter`),
    );
    await writeBatch(engine, folder, next, [
      ...quarters.map(({ quarter }) =>
        at(
          `quarter=${quarter}`,
          `SELECT * FROM ${from.marks} WHERE quarter = ${quoted(quarter)} ORDER BY bundle`,
        ),
      ),
      at(kindsFolder, `SELECT * FROM ${from.kinds}`),
      at(filesFolder, "SELECT * FROM batch_file"),
    ]);
    await engine.run("DELETE FROM batch_file");
  }
}

type MarkCells = readonly [
  ...[bundle: number, kind: number, quarter: string, low: number | null, high: number | null, marks: number],
];

function cellsOf(bundle: number, kind: number, { quarter, low, high, count }: AlikeMarks): MarkCells {
  return [bundle, kind, quarter, low, high, count];
}

type KindName = readonly [
  test: string,
  variant: string,
  fingerprint: string,
  category: string,
  ageBand: string,
];
type KindCells = readonly [kind: number, ...name: KindName];

type Kind = Pick<AlikeMarks, "test" | "variant" | "fingerprint" | "category" | "ageBand">;

function kindCells({ test, variant, fingerprint, category, ageBand }: Kind): KindName {
  return [test, variant, fingerprint, category, ageBand];
}

/** What a kind is known again by. */
function keyOf(name: KindName): string {
  return JSON.stringify(name);
}

function fileCells({ name, bytes, changed, bundle, number, refusal }: Looked, since: number) {
  return [
    name,
    bytes,
    changed,
    bundle,
    number,
    refusal === null ? null : JSON.stringify(refusal),
    reader,
    since,
  ];
}

/** Returns the numbers of all kinds, by their keys. */
async function kindsIn(engine: Engine): Promise<Map<string, number>> {
  const kinds = new Map<string, number>();
  const rows = await allOf(engine.rows<KindRow>("SELECT * FROM kept_kind"));
  for (const { kind, age_band, ...name } of rows)
    kinds.set(keyOf(kindCells({ ...name, ageBand: age_band })), kind);
  return kinds;
}

interface KindRow extends Omit<Kind, "ageBand"> {
  readonly kind: number;
  readonly age_band: string;
}

async function lookedAt(
  engine: Engine,
  folder: string,
  batches: readonly number[],
): Promise<Map<string, Looked>> {
  const known = new Map<string, Looked>();
  // In the order of the batches: a file that was changed was looked at again later.
  for (const batch of batches.toSorted((a, b) => a - b)) {
    const path = quoted(join(folder, filesFolder, `${batch}.parquet`));
    const rows = engine.rows<LookedRow>(
      `SELECT name, bytes, changed, bundle, number, refusal FROM read_parquet(${path})`,
    );
    for await (const some of rows)
      for (const row of some) {
        const refusal = row.refusal === null ? null : (JSON.parse(row.refusal) as Sentence);
        known.set(row.name, { ...row, refusal });
      }
  }
  return known;
}

interface LookedRow extends Omit<Looked, "refusal"> {
  readonly refusal: string | null;
}

/** Fills a table from files, on a connection of its own. */
async function load(engine: Engine, table: string, paths: readonly string[]): Promise<void> {
  if (paths.length === 0) return;
  const those = `read_parquet([${paths.map(quoted).join(", ")}], hive_partitioning = false)`;
  await allOf(engine.rows(`INSERT INTO ${table} SELECT * FROM ${those}`));
}
