import { constants } from "node:fs";
import { mkdir, open, readdir } from "node:fs/promises";
import { dirname, join } from "node:path";
import { readBundle } from "../api/reference/read.ts";
import type { Bundle } from "../domain/reference/bundle.ts";
import { bundleLimits } from "../domain/reference/limits.ts";
import { refused, tooBig } from "../domain/reference/refused.ts";
import { Refusal } from "../domain/refusal.ts";
import { protocolOf, testCodes } from "../domain/tests/registry.ts";
import { inUnit } from "../domain/units.ts";
import { type Sentence, sentence } from "../domain/words.ts";
import { writeWholeFiles } from "../files/whole.ts";
import { writeSheet } from "../sheets/write.ts";
import type { MergeArguments } from "./arguments.ts";
import { openEngine } from "./engine.ts";
import type { PercentileRow } from "./percentiles.ts";

/** The result of a merge. */
export interface Merged {
  readonly bundles: number;
  readonly marks: number;
  readonly keptBack: number;
  /** Number of groups with at least twenty marks. */
  readonly groups: number;
}

/**
 * Merges all bundles of a folder into one sheet of percentiles, one bundle in memory at a time. Refused ones are
 * reported as they come. Without any good one nothing is written.
 */
export async function merge(
  { folder, out }: MergeArguments,
  keepBack: (name: string, why: Sentence) => void,
): Promise<Merged> {
  const engine = await openEngine();
  try {
    let [bundles, marks, keptBack] = [0, 0, 0];
    for await (const read of readFolder(folder)) {
      if ("keptBack" in read) {
        keptBack += 1;
        keepBack(read.name, read.keptBack);
        continue;
      }
      engine.add(bundles, read.bundle.marks);
      bundles += 1;
      marks += read.bundle.marks.reduce((sum, { count }) => sum + count, 0);
    }
    if (bundles === 0) return { bundles, marks, keptBack, groups: 0 };
    const rows = await engine.percentiles();
    await mkdir(dirname(out), { recursive: true });
    await writeWholeFiles([{ path: out, content: percentilesSheet(rows) }]);
    return { bundles, marks, keptBack, groups: new Set(rows.map(groupOf)).size };
  } finally {
    await engine.close();
  }
}

const headers = [
  ...["test", "variant", "fingerprint", "category", "age_band", "percentile"],
  ...["low", "high", "unit", "better", "n", "bundles"],
];

/** Makes a sheet with a row for each percentile, in the order of tests; bounds in the test's unit, empty where open. */
function percentilesSheet(rows: readonly PercentileRow[]): string {
  // The query has sorted the rest, and this keeps that order.
  const inOrder = rows.toSorted((a, b) => testCodes.indexOf(a.test) - testCodes.indexOf(b.test));
  return writeSheet(
    headers,
    inOrder.map(({ test, variant, fingerprint, category, age_band, percentile, low, high, n, bundles }) => {
      const { grain, better } = protocolOf(test);
      const [from, to] = [low, high].map((bound) => (bound === null ? null : inUnit(grain, bound)));
      return [
        ...[test, variant, fingerprint, category, age_band, percentile],
        ...[from ?? null, to ?? null, grain.unit, better, n, bundles],
      ];
    }),
  );
}

function groupOf({ fingerprint, category, age_band }: PercentileRow): string {
  return JSON.stringify([fingerprint, category, age_band]);
}

/** One file of the folder: its bundle, or the reason to refuse it. */
type Read =
  | { readonly name: string; readonly bundle: Bundle }
  | { readonly name: string; readonly keptBack: Sentence };

/**
 * Reads the zip files of a folder one by one, by name, so that only one is in memory; no content of one can stop the
 * others. A bundle that came already, in any zip, counts once.
 */
async function* readFolder(folder: string): AsyncGenerator<Read> {
  const names = (await readdir(folder)).filter((name) => /\.zip$/i.test(name)).sort();
  const seen = new Map<string, string>();
  for (const name of names) {
    try {
      const bundle = readBundle(await bytesOf(join(folder, name)));
      requireFit(bundle, seen);
      seen.set(bundle.contentSha256, name);
      yield { name, bundle };
    } catch (error) {
      yield { name, keptBack: reasonOf(error) };
    }
  }
}

function requireFit({ demo, rehearsal, contentSha256 }: Bundle, seen: ReadonlyMap<string, string>): void {
  if (rehearsal) throw refused(sentence("reference.rehearsal"));
  if (demo) throw refused(sentence("reference.demo"));
  const first = seen.get(contentSha256);
  if (first !== undefined) throw refused(sentence("references.again", { name: first }));
}

/** Reads a file. One that is too big is not read at all, and a pipe that somebody named .zip is not waited for. */
async function bytesOf(path: string): Promise<Uint8Array> {
  const handle = await open(path, constants.O_RDONLY | constants.O_NONBLOCK);
  try {
    const status = await handle.stat();
    if (!status.isFile()) throw refused(sentence("references.notFile"));
    if (status.size > bundleLimits.bytes) throw tooBig();
    return new Uint8Array(await handle.readFile());
  } finally {
    await handle.close();
  }
}

/** Returns a refusal's own sentence, or the system's reason for an unreadable file; anything else is a fault. */
function reasonOf(error: unknown): Sentence {
  if (error instanceof Refusal) return error.sentence;
  if (error instanceof Error && "code" in error && "syscall" in error) {
    return sentence("references.notRead", { code: String(error.code) });
  }
  throw error;
}
