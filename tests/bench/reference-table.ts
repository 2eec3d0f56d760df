import { spawn } from "node:child_process";
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout } from "node:timers/promises";
import { DuckDBInstance } from "@duckdb/node-api";
import { countGroups, differences, groupsTold, marksIn, type PlainMark } from "../checks/count-table.ts";
import { manyBundles } from "../unit/reference/many.ts";
import { mergeCommand } from "./merge-command.ts";

/** What the reference table of many bundles costs, and whether it is right. */
export interface TableBench {
  readonly bundles: number;
  readonly rows: number;
  readonly generatedMs: number;
  /** Everything read anew and kept; then again with nothing new; then with a hundred more. */
  readonly wholeMs: number;
  readonly peakBytes: number;
  readonly againMs: number;
  readonly moreMs: number;
  /** What is different in the last table from a plain count; whether a run that was killed and went on makes another one. */
  readonly differences: readonly string[];
  readonly killedDifferent: boolean;
  readonly kills: readonly number[];
  /** The queries over what is kept against DuckDB's own aggregates over the same rows. */
  readonly query: { readonly oursMs: number; readonly bareMs: number; readonly keptRows: number };
}

const rowsEach = 150;
const more = 100;

/** @param bundles how many; 20,000 are three million rows. @param tell what is being done */
export async function tableBench(bundles: number, tell: (line: string) => void): Promise<TableBench> {
  const home = mkdtempSync(join(tmpdir(), "reference-table-bench-"));
  try {
    return await inHome(home, bundles, tell);
  } finally {
    rmSync(home, { recursive: true, force: true });
  }
}

async function inHome(home: string, bundles: number, tell: (line: string) => void): Promise<TableBench> {
  const [sent, kept, out] = [join(home, "sent"), join(home, "kept"), join(home, "table.zip")];
  const started = performance.now();
  const later = write(sent, bundles);
  const generatedMs = performance.now() - started;
  const key = join(home, "key.pem");
  await ended(start(home, ["--new-key", key]));
  const merge = (into: string, from: string) => [sent, "--out", into, "--kept", from, ...signed(key)];
  tell(`${bundles} bundles written in ${(generatedMs / 1000).toFixed(0)} s`);

  const whole = await timed(home, merge(out, kept));
  tell(`merged in ${seconds(whole.ms)}, ${(whole.peakBytes / 1e6).toFixed(0)} MB at most`);
  const again = await timed(home, merge(out, kept));
  cpSync(later, sent, { recursive: true });
  const added = await timed(home, merge(out, kept));
  tell(`again ${seconds(again.ms)}, with ${more} more ${seconds(added.ms)}`);
  const query = await ratio(home, kept);
  tell(`queries ${seconds(query.oursMs)}, DuckDB's own aggregates ${seconds(query.bareMs)}`);

  const table = new Uint8Array(readFileSync(out));
  const kills = await killing(home, merge(join(home, "killed.zip"), join(home, "killed")), whole.ms);
  const killedDifferent = !Buffer.from(table).equals(readFileSync(join(home, "killed.zip")));
  tell(
    `killed after ${kills.map(seconds).join(", ")} and gone on: ${killedDifferent ? "different" : "equal"}`,
  );
  const wrong = differences(groupsTold(table), countGroups(marksOf(sent)));
  tell(`counted: ${wrong.length} differences`);
  return {
    ...{ bundles, rows: bundles * rowsEach, generatedMs, wholeMs: whole.ms, peakBytes: whole.peakBytes },
    ...{ againMs: again.ms, moreMs: added.ms, differences: wrong, killedDifferent, kills, query },
  };
}

const seconds = (ms: number) => `${(ms / 1000).toFixed(1)} s`;

const signed = (key: string) => ["--key", key, "--publisher", "The harbour table"];

/** Writes the bundles, a tenth of them in subfolders of ten, and a hundred more elsewhere; returns where those are. */
function write(sent: string, bundles: number): string {
  const later = `${sent}-later`;
  mkdirSync(later, { recursive: true });
  let index = 0;
  for (const { bytes } of manyBundles(bundles + more, rowsEach)) {
    const group = Math.floor(index / 100);
    const folder = index >= bundles ? later : index % 100 < 10 ? join(sent, `hall ${group}`) : sent;
    mkdirSync(folder, { recursive: true });
    writeFileSync(join(folder, `${String(index).padStart(6, "0")}.zip`), bytes);
    index += 1;
  }
  return later;
}

function* marksOf(sent: string): Generator<PlainMark> {
  for (const name of readdirSync(sent, { recursive: true, encoding: "utf8" })) {
    if (!name.endsWith(".zip")) continue;
    const hall = name.includes("/") ? name.slice(0, name.indexOf("/")) : name;
    yield* marksIn(new Uint8Array(readFileSync(join(sent, name))), hall);
  }
}

/** Starts the command as a terminal does. */
function start(cwd: string, args: readonly string[]) {
  return spawn(process.execPath, [...mergeCommand, ...args], {
    cwd,
    stdio: ["ignore", "ignore", "pipe", "pipe"],
  });
}

type Started = ReturnType<typeof start>;

/** Waits for the end of a command; its peak of memory, or null when it was killed. */
async function ended(child: Started): Promise<number | null> {
  const said = { stderr: "", peak: "" };
  child.stderr?.on("data", (text: Buffer) => {
    said.stderr += text.toString();
  });
  child.stdio[3]?.on("data", (text: Buffer) => {
    said.peak += text.toString();
  });
  const [code, signal] = await new Promise<[number | null, NodeJS.Signals | null]>((resolve) =>
    child.on("close", (...how) => resolve(how)),
  );
  if (signal === "SIGKILL") return null;
  if (code !== 0) throw new Error(`The merge ended with ${code}: ${said.stderr}`);
  return Number(said.peak) * 1024;
}

async function timed(cwd: string, args: readonly string[]): Promise<{ ms: number; peakBytes: number }> {
  const from = performance.now();
  const peakBytes = await ended(start(cwd, args));
  return { ms: performance.now() - from, peakBytes: peakBytes ?? 0 };
}

/** Kills the command five times, at moments of its first sixth, and lets it go to its end. */
async function killing(cwd: string, args: readonly string[], wholeMs: number): Promise<number[]> {
  const moments: number[] = [];
  for (let kill = 0; kill < 5; kill += 1) {
    const ms = (0.02 + 0.16 * Math.random()) * wholeMs;
    const child = start(cwd, args);
    const end = ended(child);
    await setTimeout(ms);
    child.kill("SIGKILL");
    if ((await end) === null) moments.push(ms);
  }
  await ended(start(cwd, args));
  return moments;
}

/**
 * The merge's queries over what is kept, against what DuckDB has for it by itself: over the same rows as they were in the
 * bundles, one for each mark and as Parquet, for the same four kinds of groups, the number of marks and of halls and 19
 * percentiles of either bound. Three times each by turns; the medians.
 */
async function ratio(home: string, kept: string): Promise<TableBench["query"]> {
  const { groupsOf } = await import("../../electron/reference/groups.ts");
  const { openEngine } = await import("../../electron/reference/engine.ts");
  const { steps } = await import("../../electron/reference/steps.ts");
  const files = `read_parquet('${join(kept, "quarter=*", "*.parquet")}', hive_partitioning = false)`;
  const flat = join(kept, "flat.parquet");
  const instance = await DuckDBInstance.create(":memory:", { threads: "2" });
  const bare = await instance.connect();
  const kinds = `read_parquet('${join(kept, "kinds", "*.parquet")}')`;
  await bare.run(`COPY (SELECT bundle AS hall, * EXCLUDE (bundle, kind, marks), generate_series
    FROM ${files} JOIN ${kinds} USING (kind), generate_series(1, marks)) TO '${flat}' (FORMAT parquet, COMPRESSION zstd)`);
  const rows = await bare.runAndReadAll(`SELECT COUNT(*)::INTEGER FROM ${files}`);
  const [[keptRows]] = rows.getRowsJS() as [[number]];
  const places = Array.from({ length: 19 }, (_none, index) => (index + 1) / 20).join();
  const own = `SELECT test, variant, fingerprint, category, age_band, COUNT(*), COUNT(DISTINCT hall), MIN(quarter),
      MAX(quarter), quantile_disc(COALESCE(low, -1), [${places}]), quantile_disc(COALESCE(high, 2147483647), [${places}])
    FROM read_parquet('${flat}') GROUP BY GROUPING SETS ((test, variant, fingerprint, category, age_band),
      (test, variant, fingerprint, category), (test, variant, fingerprint, age_band), (test, variant, fingerprint))`;
  const [ours, theirs]: [number[], number[]] = [[], []];
  for (let turn = 0; turn < 3; turn += 1) {
    theirs.push(await taking(async () => void (await bare.runAndReadAll(own))));
    const working = join(home, `working-${turn}`);
    mkdirSync(working);
    const engine = await openEngine(working, kept);
    await engine.run(steps.tables);
    await engine.run(`CREATE TABLE source AS SELECT bundle, ROW_NUMBER() OVER () AS hall
      FROM (SELECT DISTINCT bundle FROM ${files}) AS each`);
    await engine.run(`CREATE VIEW kind AS SELECT * FROM ${kinds}`);
    await engine.run(`CREATE VIEW mark AS SELECT source.hall, kept.* FROM ${files} AS kept
      JOIN source ON source.bundle = kept.bundle`);
    ours.push(await taking(async () => void (await groupsOf(engine))));
    engine.close();
  }
  bare.closeSync();
  instance.closeSync();
  if (existsSync(flat)) rmSync(flat);
  const median = (values: readonly number[]) => values.toSorted((a, b) => a - b)[1] ?? Number.NaN;
  return { oursMs: median(ours), bareMs: median(theirs), keptRows };
}

async function taking(work: () => Promise<void>): Promise<number> {
  const from = performance.now();
  await work();
  return performance.now() - from;
}
