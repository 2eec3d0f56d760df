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
  readonly refusal: Sentence | null;
}

/**
 * What was checked of the files that were sent, as Parquet files in batches: of batch n, `quarter=2026-Q3/n.parquet` for
 * each quarter with the marks of its bundles, `quarter=none/n.parquet` with what people handed in, and `files/n.parquet` with the files that were looked at. That one is
 * written last and is what makes the batch count; files of a batch without it are left by a process that was killed, and
 * are deleted. So at any moment the folder is as after some batch, and nothing is there twice.
 */
export interface Kept {
  /** What is known of a file of this name, whatever it is by now. */
  find(name: string): Looked | undefined;
  /** Adds a file to the batch at hand, with the marks in it; marks that are kept already are not kept again. */
  add(looked: Looked, marks: readonly AlikeMarks[]): void;
  /** How many files are in the batch at hand. */
  readonly waiting: number;
  /** Writes the batch at hand whole, through to the disk. */
  flush(): Promise<void>;
  /** Returns SQL that reads all marks of bundles: bundle, test, variant, fingerprint, category, age_band, quarter, low, high, marks. */
  marks(): string;
  /** The same of what people handed in. */
  handed(): string;
}

/** Goes up when bundles that were refused or read before may be read otherwise now; everything is looked at again then. */
const reader = `1/${rulesVersion}/${readableVersions.join("+")}`;

const filesFolder = "files";
/** The quarter of what people handed in, which says none. */
export const noQuarter = "none";
const quarterFolder = /^quarter=(\d{4}(-Q[1-4])?|none)$/;

function isHanded(path: string): boolean {
  return basename(dirname(path)) === `quarter=${noQuarter}`;
}

const batchTables = `
  CREATE TABLE batch_mark (
    bundle TEXT NOT NULL, test TEXT NOT NULL, variant TEXT NOT NULL, fingerprint TEXT NOT NULL,
    category TEXT NOT NULL, age_band TEXT NOT NULL, quarter TEXT NOT NULL,
    low INTEGER, high INTEGER, marks INTEGER NOT NULL
  );
  CREATE TABLE batch_file (
    name TEXT NOT NULL, bytes BIGINT NOT NULL, changed TEXT NOT NULL, bundle TEXT, refusal TEXT, reader TEXT NOT NULL
  )`;

/** Opens what is kept in a folder, which is there; nobody else may have it open. */
export async function openKept(engine: Engine, folder: string): Promise<Kept> {
  await mkdir(join(folder, filesFolder), { recursive: true });
  await engine.run(batchTables);
  const batches = await wholeBatches(engine, folder);
  let marksFiles = await tidied(folder, batches);
  const known = await lookedAt(engine, folder, batches);
  const bundles = new Set([...known.values()].flatMap(({ bundle }) => bundle ?? []));
  let next = Math.max(0, ...batches) + 1;
  let files: Looked[] = [];
  let marks: MarkCells[] = [];
  return {
    find: (name) => known.get(name),
    add(looked, told) {
      known.set(looked.name, looked);
      files.push(looked);
      if (looked.bundle === null || bundles.has(looked.bundle)) return;
      bundles.add(looked.bundle);
      for (const each of told) marks.push(cellsOf(looked.bundle, each));
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
      await writeThrough(engine, join(folder, filesFolder, `${next}.parquet`), "SELECT * FROM batch_file");
      await engine.run("DELETE FROM batch_mark; DELETE FROM batch_file");
      marksFiles = [...marksFiles, ...written];
      [files, marks, next] = [[], [], next + 1];
    },
    marks: () => readingAll(marksFiles.filter((path) => !isHanded(path))),
    handed: () => readingAll(marksFiles.filter(isHanded)),
  };
}

type MarkCells = readonly [
  ...[bundle: string, test: string, variant: string, fingerprint: string, category: string],
  ...[ageBand: string, quarter: string, low: number | null, high: number | null, marks: number],
];

function cellsOf(bundle: string, mark: AlikeMarks): MarkCells {
  const { test, variant, fingerprint, category, ageBand, quarter, low, high, count } = mark;
  return [bundle, test, variant, fingerprint, category, ageBand, quarter, low, high, count];
}

function quarterOf([, , , , , , quarter]: MarkCells): string {
  return quarter;
}

function fileCells({ name, bytes, changed, bundle, refusal }: Looked) {
  return [name, bytes, changed, bundle, refusal === null ? null : JSON.stringify(refusal), reader];
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
  const whole: number[] = [];
  for (const name of await readdir(join(folder, filesFolder))) {
    const batch = batchOf(name);
    if (batch === undefined) continue;
    const path = join(folder, filesFolder, name);
    const by = `SELECT DISTINCT reader FROM read_parquet(${quoted(path)})`;
    const readers = await allOf(engine.rows<{ reader: string }>(by));
    if (readers.every((each) => each.reader === reader)) whole.push(batch);
    else await rm(path);
  }
  return whole;
}

function batchOf(name: string): number | undefined {
  const [, number] = /^([1-9]\d*)\.parquet$/.exec(name) ?? [];
  return number === undefined ? undefined : Number(number);
}

/** Deletes what batches left that don't count, and returns the paths of all others' marks. */
async function tidied(folder: string, batches: readonly number[]): Promise<string[]> {
  const counting = new Set(batches);
  const paths: string[] = [];
  const quarters = (await readdir(folder)).filter((name) => quarterFolder.test(name));
  for (const inside of [filesFolder, ...quarters]) {
    for (const name of await readdir(join(folder, inside))) {
      const path = join(folder, inside, name);
      const batch = batchOf(name);
      if (batch !== undefined && counting.has(batch)) {
        if (inside !== filesFolder) paths.push(path);
      } else if (batch !== undefined || /^[1-9]\d*\.parquet\.part$/.test(name)) await rm(path);
    }
  }
  return paths.sort();
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
      `SELECT name, bytes, changed, bundle, refusal FROM read_parquet(${path})`,
    );
    for await (const row of rows) {
      const refusal = row.refusal === null ? null : (JSON.parse(row.refusal) as Sentence);
      known.set(row.name, { ...row, refusal });
    }
  }
  return known;
}

interface LookedRow extends Stamp {
  readonly name: string;
  readonly bundle: string | null;
  readonly refusal: string | null;
}

function readingAll(paths: readonly string[]): string {
  if (paths.length === 0) return "SELECT * FROM batch_mark";
  return `SELECT * FROM read_parquet([${paths.map(quoted).join(", ")}], hive_partitioning = false)`;
}
