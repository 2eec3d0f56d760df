import { mkdir, readdir, rename, rm } from "node:fs/promises";
import { basename, dirname, join } from "node:path";
import type { AlikeMarks } from "../domain/reference/bundle.ts";
import { readableVersions } from "../domain/reference/descriptor.ts";
import { rulesVersion } from "../domain/tests/registry.ts";
import type { Sentence } from "../domain/words.ts";
import { syncFile, syncFolder } from "../files/through.ts";
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
 * each quarter with the marks of its bundles, `kinds/n.parquet` with the kinds of marks that no batch before had, `quarter=none/n.parquet` with what people handed in, and `files/n.parquet` with the files that were looked at. That one is
 * written last and is what makes the batch count; files of a batch without it are left by a process that was killed, and
 * are deleted. So at any moment the folder is as after some batch, and nothing is there twice.
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
  /** Returns SQL that reads all marks of bundles: bundle and kind (their numbers), quarter, low, high, marks. */
  marks(): string;
  /** The same of what people handed in. */
  handed(): string;
  /** Returns SQL that reads all kinds of marks: kind, test, variant, fingerprint, category, age_band. */
  kinds(): string;
}

/** Goes up when bundles that were refused or read before may be read otherwise now; everything is looked at again then. */
const reader = `2/${rulesVersion}/${readableVersions.join("+")}`;

const filesFolder = "files";
const kindsFolder = "kinds";
/** The quarter of what people handed in, which says none. */
export const noQuarter = "none";
const quarterFolder = /^quarter=(\d{4}(-Q[1-4])?|none)$/;

function isHanded(path: string): boolean {
  return basename(dirname(path)) === `quarter=${noQuarter}`;
}

const batchTables = `
  CREATE TABLE batch_mark (
    bundle INTEGER NOT NULL, kind INTEGER NOT NULL, quarter TEXT NOT NULL,
    low INTEGER, high INTEGER, marks INTEGER NOT NULL
  );
  CREATE TABLE batch_kind (
    kind INTEGER NOT NULL, test TEXT NOT NULL, variant TEXT NOT NULL, fingerprint TEXT NOT NULL,
    category TEXT NOT NULL, age_band TEXT NOT NULL
  );
  CREATE TABLE batch_file (
    name TEXT NOT NULL, bytes BIGINT NOT NULL, changed TEXT NOT NULL, bundle TEXT, number INTEGER, refusal TEXT,
    reader TEXT NOT NULL
  )`;

/** Opens what is kept in a folder, which is there; nobody else may have it open. */
export async function openKept(engine: Engine, folder: string): Promise<Kept> {
  for (const inside of [filesFolder, kindsFolder]) await mkdir(join(folder, inside), { recursive: true });
  await engine.run(batchTables);
  const batches = await wholeBatches(engine, folder);
  const there = await tidied(folder, batches);
  let marksFiles = there.marks;
  let kindsFiles = there.kinds;
  const kinds = await kindsIn(engine, kindsFiles);
  const numberOf = (mark: AlikeMarks): number => {
    const cells = kindCells(mark);
    const key = JSON.stringify(cells);
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
      await engine.add("batch_mark", marks);
      await engine.add("batch_file", files.map(fileCells));
      const quarters = [...new Set(marks.map(quarterOf))].sort();
      const written: string[] = [];
      for (const quarter of quarters) {
        const path = join(folder, `quarter=${quarter}`, `${next}.parquet`);
        await writeThrough(
          engine,
          path,
          `SELECT * FROM batch_mark WHERE quarter = ${quoted(quarter)} ORDER BY bundle`,
        );
        written.push(path);
      }
      if (newKinds.length > 0) {
        await engine.add("batch_kind", newKinds);
        const path = join(folder, kindsFolder, `${next}.parquet`);
        await writeThrough(engine, path, "SELECT * FROM batch_kind");
        kindsFiles = [...kindsFiles, path];
      }
      await writeThrough(engine, join(folder, filesFolder, `${next}.parquet`), "SELECT * FROM batch_file");
      await engine.run("DELETE FROM batch_mark; DELETE FROM batch_file; DELETE FROM batch_kind");
      marksFiles = [...marksFiles, ...written];
      [files, marks, newKinds, next] = [[], [], [], next + 1];
    },
    marks: () =>
      readingAll(
        marksFiles.filter((path) => !isHanded(path)),
        "batch_mark",
      ),
    handed: () => readingAll(marksFiles.filter(isHanded), "batch_mark"),
    kinds: () => readingAll(kindsFiles, "batch_kind"),
  };
}

type MarkCells = readonly [
  ...[bundle: number, kind: number, quarter: string, low: number | null, high: number | null, marks: number],
];

function cellsOf(bundle: number, kind: number, { quarter, low, high, count }: AlikeMarks): MarkCells {
  return [bundle, kind, quarter, low, high, count];
}

function quarterOf([, , quarter]: MarkCells): string {
  return quarter;
}

type KindName = readonly [
  test: string,
  variant: string,
  fingerprint: string,
  category: string,
  ageBand: string,
];
type KindCells = readonly [kind: number, ...name: KindName];

function kindCells({ test, variant, fingerprint, category, ageBand }: AlikeMarks): KindName {
  return [test, variant, fingerprint, category, ageBand];
}

function fileCells({ name, bytes, changed, bundle, number, refusal }: Looked) {
  return [name, bytes, changed, bundle, number, refusal === null ? null : JSON.stringify(refusal), reader];
}

/** Writes a query's rows to a file that is there whole or not at all, also after a power cut. */
async function writeThrough(engine: Engine, path: string, query: string): Promise<void> {
  const folder = dirname(path);
  await mkdir(folder, { recursive: true });
  const part = `${path}.part`;
  await engine.writeParquet(part, query);
  syncFile(part);
  await rename(part, path);
  syncFolder(folder);
}

/** Returns the numbers of the batches that count; those of another reader no longer do. */
async function wholeBatches(engine: Engine, folder: string): Promise<number[]> {
  const there = (await readdir(join(folder, filesFolder))).flatMap((name) => batchOf(name) ?? []);
  if (there.length === 0) return [];
  const paths = new Map(there.map((batch) => [join(folder, filesFolder, `${batch}.parquet`), batch]));
  // By name: an older reader's batches have other columns.
  const others = await allOf(
    engine.rows<{ filename: string }>(`SELECT DISTINCT filename
      FROM read_parquet([${[...paths.keys()].map(quoted).join()}], filename = true, union_by_name = true)
      WHERE reader <> ${quoted(reader)}`),
  );
  for (const { filename } of others) {
    await rm(filename);
    paths.delete(filename);
  }
  return [...paths.values()];
}

function batchOf(name: string): number | undefined {
  const [, number] = /^([1-9]\d*)\.parquet$/.exec(name) ?? [];
  return number === undefined ? undefined : Number(number);
}

/** Deletes what batches left that don't count, and returns the paths of all others' marks and kinds. */
async function tidied(
  folder: string,
  batches: readonly number[],
): Promise<{ marks: string[]; kinds: string[] }> {
  const counting = new Set(batches);
  const [marks, kinds]: [string[], string[]] = [[], []];
  const quarters = (await readdir(folder)).filter((name) => quarterFolder.test(name));
  for (const inside of [filesFolder, kindsFolder, ...quarters]) {
    for (const name of await readdir(join(folder, inside))) {
      const path = join(folder, inside, name);
      const batch = batchOf(name);
      if (batch !== undefined && counting.has(batch)) {
        if (inside === kindsFolder) kinds.push(path);
        else if (inside !== filesFolder) marks.push(path);
      } else if (batch !== undefined || /^[1-9]\d*\.parquet\.part$/.test(name)) await rm(path);
    }
  }
  return { marks: marks.sort(), kinds };
}

/** Returns the numbers of all kinds, by their names as JSON. */
async function kindsIn(engine: Engine, paths: readonly string[]): Promise<Map<string, number>> {
  const kinds = new Map<string, number>();
  const rows = engine.rows<KindRow>(readingAll(paths, "batch_kind"));
  for await (const { kind, test, variant, fingerprint, category, age_band } of rows)
    kinds.set(JSON.stringify([test, variant, fingerprint, category, age_band]), kind);
  return kinds;
}

interface KindRow {
  readonly kind: number;
  readonly test: string;
  readonly variant: string;
  readonly fingerprint: string;
  readonly category: string;
  readonly age_band: string;
}

async function lookedAt(
  engine: Engine,
  folder: string,
  batches: readonly number[],
): Promise<Map<string, Looked>> {
  const known = new Map<string, Looked>();
  if (batches.length === 0) return known;
  const paths = batches.map((batch) => join(folder, filesFolder, `${batch}.parquet`));
  const batch = new Map(paths.map((path, index) => [path, batches[index] ?? 0]));
  const latest = new Map<string, number>();
  const rows = engine.rows<LookedRow>(`SELECT name, bytes, changed, bundle, number, refusal, filename
    FROM read_parquet([${paths.map(quoted).join()}], filename = true)`);
  for await (const { filename, ...row } of rows) {
    const nth = batch.get(filename) ?? 0;
    // A file that was changed was looked at again, in a later batch.
    if ((latest.get(row.name) ?? 0) > nth) continue;
    latest.set(row.name, nth);
    const refusal = row.refusal === null ? null : (JSON.parse(row.refusal) as Sentence);
    known.set(row.name, { ...row, refusal });
  }
  return known;
}

interface LookedRow extends Omit<Looked, "refusal"> {
  readonly refusal: string | null;
  /** The batch's own file, which the engine says. */
  readonly filename: string;
}

/** @param empty a table of the same columns without rows, where no file is there */
function readingAll(paths: readonly string[], empty: "batch_mark" | "batch_kind"): string {
  if (paths.length === 0) return `SELECT * FROM ${empty}`;
  return `SELECT * FROM read_parquet([${paths.map(quoted).join(", ")}], hive_partitioning = false)`;
}
