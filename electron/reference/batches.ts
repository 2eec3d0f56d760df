import { mkdir, readdir, rename, rm } from "node:fs/promises";
import { basename, dirname, join } from "node:path";
import { readableVersions } from "../domain/reference/descriptor.ts";
import { rulesVersion } from "../domain/tests/registry.ts";
import { syncFile, syncFolder } from "../files/through.ts";
import { allOf } from "./database.ts";
import { type Engine, quoted } from "./engine.ts";

/** Goes up when bundles that were refused or read before may be read otherwise now; everything is looked at again then. */
export const reader = `2/${rulesVersion}/${readableVersions.join("+")}`;

/** Batches above which all are made one when a merge has looked at every file. */
export const mostBatches = 8;

export const filesFolder = "files";
export const kindsFolder = "kinds";
/** The quarter of what people handed in, which says none. */
export const noQuarter = "none";
const quarterFolder = /^quarter=(\d{4}(-Q[1-4])?|none)$/;

/** Writes a query's rows to a file that is there whole or not at all, also after a power cut. */
export async function writeThrough(engine: Engine, path: string, query: string): Promise<void> {
  const folder = dirname(path);
  await mkdir(folder, { recursive: true });
  const part = `${path}.part`;
  await engine.writeParquet(part, query);
  syncFile(part);
  await rename(part, path);
  syncFolder(folder);
}

/** Returns the numbers of the batches that count: those of another reader no longer do, nor those that another stands for. */
export async function wholeBatches(engine: Engine, folder: string): Promise<number[]> {
  const there = (await readdir(join(folder, filesFolder))).flatMap((name) => batchOf(name) ?? []);
  if (there.length === 0) return [];
  const paths = there.map((each) => join(folder, filesFolder, `${each}.parquet`));
  // By name: an older reader's batches have other columns.
  const rows = await allOf(
    engine.rows<{ filename: string; reader: string; since: number }>(`SELECT DISTINCT filename, reader, since
      FROM read_parquet([${paths.map(quoted).join()}], filename = true, union_by_name = true)`),
  );
  const whole: { readonly batch: number; readonly since: number }[] = [];
  for (const { filename, reader: by, since } of rows) {
    const batch = batchOf(basename(filename));
    if (by !== reader) await rm(filename);
    else if (batch !== undefined) whole.push({ batch, since });
  }
  const isIn = (batch: number) => whole.some((other) => other.since <= batch && batch < other.batch);
  return whole.map(({ batch }) => batch).filter((batch) => !isIn(batch));
}

function batchOf(name: string): number | undefined {
  const [, number] = /^([1-9]\d*)\.parquet$/.exec(name) ?? [];
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
