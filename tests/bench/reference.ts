import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { bundlesAt, countPercentiles } from "../checks/count-percentiles.ts";
import { manyBundles } from "../unit/reference/many.ts";
import { mergeCommand } from "./merge-command.ts";

/** How long merging many bundles takes, what it holds in memory at most, and whether its sheet is right. */
export interface ReferenceBench {
  readonly bundles: number;
  readonly rows: number;
  readonly ms: number;
  /** Peak of the whole process, and of one that only starts and reads one bundle. */
  readonly peakBytes: number;
  readonly onePeakBytes: number;
  /** Lines of the sheet, and whether an independent counter gives the same ones. */
  readonly lines: number;
  readonly equal: boolean;
}

const bundles = 2000;
const rowsEach = 150;

/** Writes the bundles, then runs the command as a terminal does. Throws when it does not take all of them. */
export function referenceBench(): ReferenceBench {
  const folder = mkdtempSync(join(tmpdir(), "reference-bench-"));
  try {
    const [many, one] = [write(folder, "many", bundles), write(folder, "one", 1)];
    const { peakBytes: onePeakBytes } = run(join(folder, "one"), join(folder, "one.csv"));
    const out = join(folder, "many.csv");
    const { ms, peakBytes } = run(join(folder, "many"), out);
    const lines = readFileSync(out, "utf8").split("\r\n").slice(1, -1).sort();
    const expected = countPercentiles(bundlesAt(many)).sort();
    const equal = one.length === 1 && JSON.stringify(lines) === JSON.stringify(expected);
    return { bundles, rows: bundles * rowsEach, ms, peakBytes, onePeakBytes, lines: lines.length, equal };
  } finally {
    rmSync(folder, { recursive: true });
  }
}

function write(folder: string, name: string, count: number): string[] {
  mkdirSync(join(folder, name));
  return [...namesAndBytes(count)].map(([file, bytes]) => {
    const path = join(folder, name, file);
    writeFileSync(path, bytes);
    return path;
  });
}

function* namesAndBytes(count: number): Generator<[string, Uint8Array]> {
  let index = 0;
  for (const { bytes } of manyBundles(count, rowsEach)) {
    yield [`${String(index).padStart(5, "0")}.zip`, bytes];
    index += 1;
  }
}

function run(from: string, out: string): { ms: number; peakBytes: number } {
  const start = performance.now();
  const { status, stderr, output } = spawnSync(process.execPath, [...mergeCommand, from, "--out", out], {
    encoding: "utf8",
    stdio: ["ignore", "pipe", "pipe", "pipe"],
  });
  if (status !== 0) throw new Error(`The merge ended with ${status}: ${stderr}`);
  return { ms: performance.now() - start, peakBytes: Number(output[3]) * 1024 };
}
