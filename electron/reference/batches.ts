import { hash } from "node:crypto";
import { mkdir, readdir, readFile, rename, rm, writeFile } from "node:fs/promises";
import { basename, dirname, join } from "node:path";
import { readableVersions } from "../domain/reference/descriptor.ts";
import { rulesVersion } from "../domain/tests/registry.ts";
import { sentence } from "../domain/words.ts";
import { syncFile, syncFolder } from "../files/through.ts";
import { allOf } from "./database.ts";
import { type Engine, quoted } from "./engine.ts";
import { NothingToMerge } from "./nothing.ts";

/** Goes up when bundles that were refused or read before may be read otherwise now; everything is looked at again then. */
export const reader = `2/${rulesVersion}/${readableVersions.join("+")}`;

/** Batches above which all are made one when a merge has looked at every file. */
export const mostBatches = 8;

export const filesFolder = "files";
export const kindsFolder = "kinds";
/** Of every batch, the SHA-256 sums of its files, as lines of a sum, two blanks and a path. */
const sumsFolder = "sums";
/** The quarter of what people handed in, which says none. */
export const noQuarter = "none";
const quarterFolder = /^quarter=(\d{4}(-Q[1-4])?|none)$/;

/** A file of a batch: its path below the folder of what is kept, and the query for its rows. */
export interface BatchFile {
  readonly path: string;
  readonly query: string;
}

/** Writes a batch, which counts when its sums are there, and those are written last: whole or not at all, also after a power cut. */
export async function writeBatch(
  engine: Engine,
  folder: string,
  batch: number,
  files: readonly BatchFile[],
): Promise<void> {
  const lines: string[] = [];
  for (const { path, query } of files) {
    await throughTo(join(folder, path), (part) => engine.writeParquet(part, query));
    lines.push(`${await sumOf(join(folder, path))}  ${path}\n`);
  }
  await throughTo(sumsOf(folder, batch), (part) => writeFile(part, lines.join("")));
}

async function throughTo(path: string, write: (part: string) => Promise<void>): Promise<void> {
  const folder = dirname(path);
  await mkdir(folder, { recursive: true });
  const part = `${path}.part`;
  await write(part);
  syncFile(part);
  await rename(part, path);
  syncFolder(folder);
}

async function sumOf(path: string): Promise<string> {
  return hash("sha256", await readFile(path));
}

const sumsOf = (folder: string, batch: number) => join(folder, sumsFolder, `${batch}.sha256`);

/** Returns the numbers in the names of a folder's files, which end so; a folder that is missing has none. */
async function batchesIn(folder: string, ending: string): Promise<number[]> {
  await mkdir(folder, { recursive: true });
  return (await readdir(folder)).flatMap((name) => (name.endsWith(ending) ? (batchOf(name) ?? []) : []));
}

/** Checks those files of a batch that are `wanted` by their sums. @throws NothingToMerge when one is not as it was written */
async function check(folder: string, batch: number, wanted: (path: string) => boolean): Promise<void> {
  for (const line of (await readFile(sumsOf(folder, batch), "utf8")).split("\n").slice(0, -1)) {
    const [sum, path = ""] = line.split("  ");
    if (!wanted(path)) continue;
    const file = join(folder, path);
    const now = await sumOf(file).catch(() => null);
    if (now !== sum) throw new NothingToMerge(sentence("references.damaged", { file, path: folder }));
  }
}

const listOf = (batch: number) => `${filesFolder}/${batch}.parquet`;

/**
 * Returns the numbers of the batches that count: those of another reader no longer do, nor those that another stands for.
 * @throws NothingToMerge when a file of one is missing or is not as it was written
 */
export async function wholeBatches(engine: Engine, folder: string): Promise<number[]> {
  const lists = new Set(await batchesIn(join(folder, filesFolder), ".parquet"));
  // The last that is written, and the first that is deleted.
  const there = (await batchesIn(join(folder, sumsFolder), ".sha256")).filter((batch) => lists.has(batch));
  if (there.length === 0) return [];
  for (const batch of there) await check(folder, batch, (path) => path === listOf(batch));
  const paths = there.map((each) => join(folder, listOf(each)));
  // By name: an older reader's batches have other columns.
  const rows = await allOf(
    engine.rows<{ filename: string; reader: string; since: number }>(`SELECT DISTINCT filename, reader, since
      FROM read_parquet([${paths.map(quoted).join()}], filename = true, union_by_name = true)`),
  );
  const whole: { readonly batch: number; readonly since: number }[] = [];
  for (const { filename, reader: by, since } of rows) {
    const batch = batchOf(basename(filename));
    if (by === reader && batch !== undefined) whole.push({ batch, since });
  }
  const isIn = (batch: number) => whole.some((other) => other.since <= batch && batch < other.batch);
  const counting = whole.map(({ batch }) => batch).filter((batch) => !isIn(batch));
  for (const batch of counting) await check(folder, batch, (path) => path !== listOf(batch));
  return counting;
}

function batchOf(name: string): number | undefined {
  const [, number] = /^([1-9]\d*)\.(?:parquet|sha256)$/.exec(name) ?? [];
  return number === undefined ? undefined : Number(number);
}

/** Deletes what batches left that don't count, and returns the paths of all others' marks and kinds. */
export async function tidied(
  folder: string,
  batches: readonly number[],
): Promise<{ marks: string[]; kinds: string[] }> {
  const counting = new Set(batches);
  const [marks, kinds]: [string[], string[]] = [[], []];
  const quarters = (await readdir(folder)).filter((name) => quarterFolder.test(name));
  for (const inside of [sumsFolder, filesFolder, kindsFolder, ...quarters]) {
    for (const name of await readdir(join(folder, inside))) {
      const path = join(folder, inside, name);
      const batch = batchOf(name);
      if (batch !== undefined && counting.has(batch)) {
        if (inside === kindsFolder) kinds.push(path);
        else if (inside.startsWith("quarter=")) marks.push(path);
      } else if (batch !== undefined || /^[1-9]\d*\.(?:parquet|sha256)\.part$/.test(name)) await rm(path);
    }
  }
  return { marks: marks.sort(), kinds };
}
