import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { copyFileSync, cpSync, existsSync, mkdirSync, rmSync } from "node:fs";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { ensureBuild } from "../../electron/runtime/build.ts";
import { openStore } from "../../electron/store/connection/open.ts";
import { bringLogIn } from "../../electron/store/keeping/guard.ts";
import { environment, prepareStage, type Stage } from "../e2e/launch.ts";
import { connectionOf } from "../store/connection.ts";
import { emptyProgram } from "./empty-window.ts";
import { makeHeldStore } from "./held-store.ts";

/** How long a start took, in ms from its being asked for: medians of the rounds. */
interface StartBench {
  readonly start: string;
  /** Until the first window is on the screen, whatever it says. */
  readonly shownMs: number;
  /** Until the program can be used. */
  readonly usableMs: number;
  /** Against the empty window of the same rounds. */
  readonly ratio: number;
  readonly bar: number;
}

/** `-- start MEGABYTES`: with a store of that size too. */
export async function startLines(megabytes = 50): Promise<string[]> {
  // Whatever was built before may be of other sources.
  await ensureBuild(console.log);
  const told = await startBench(megabytes, 5);
  return told.map(({ start, shownMs, usableMs, ratio, bar }) => {
    const judged = bar === Number.POSITIVE_INFINITY ? "no bar" : ratio <= bar ? "kept" : "NOT KEPT";
    const times = `shown after ${shownMs} ms, usable after ${usableMs} ms`;
    return `${start}: ${times}, ${ratio.toFixed(2)} times an empty window (bar ${bar}, ${judged})`;
  });
}

interface Kind {
  readonly start: string;
  readonly bar: number;
  /** Puts the store in the folder into the state to start from. */
  prepare(folder: string): void;
}

interface Took {
  readonly shown: number;
  readonly usable: number;
}

const watch = join(import.meta.dirname, "start-watch.cjs");
const store = "tapeline.sqlite";
const sized = (megabytes: number, bar: number): Kind => ({
  ...{ start: `${megabytes} MB, whole seal`, bar },
  prepare() {},
});

/**
 * The built program, started by turns with a program of the same runtime that is nothing but an empty window: without a
 * store, with one of 50 MB and with one of `megabytes` under a whole seal, and with that one after a kill in the middle of a
 * checkpoint.
 */
async function startBench(megabytes: number, rounds: number): Promise<StartBench[]> {
  const root = await mkdtemp(join(tmpdir(), "tapeline-start-"));
  const stage = await prepareStage();
  const linked = await mkdtemp(join(dirname(dirname(stage.runtime.executablePath)), "empty-"));
  try {
    const empty = await emptyProgram(stage.runtime, linked);
    const kinds: Kind[] = [
      { start: "no store", bar: 1.8, prepare: (folder) => rmSync(folder, { recursive: true, force: true }) },
      sized(50, 2),
      ...(megabytes === 50 ? [] : [sized(megabytes, 2)]),
      {
        start: `${megabytes} MB, ended in a checkpoint`,
        bar: Number.POSITIVE_INFINITY,
        prepare: cutInCheckpoint,
      },
    ];
    const folders = await Promise.all(kinds.map((_, at) => mkdtemp(join(root, `${at}-`))));
    await makeStores(folders, megabytes);
    const times = new Map<string, Took[]>();
    const add = (name: string, took: Took) => times.set(name, [...(times.get(name) ?? []), took]);
    // The first round warms the disk's memory up.
    for (let round = 0; round <= rounds; round += 1) {
      const alone = await startedOnce(stage, empty, join(root, "none"));
      if (round > 0) add("empty", alone);
      for (const [at, { start, prepare }] of kinds.entries()) {
        const folder = folders[at] ?? root;
        prepare(folder);
        const took = await startedOnce(stage, stage.runtime.executablePath, folder);
        if (round > 0) add(start, took);
      }
    }
    const emptyMs = median((times.get("empty") ?? []).map(({ usable }) => usable));
    return [{ start: "an empty window", bar: 1 }, ...kinds].map(({ start, bar }) => {
      const all = times.get(start) ?? times.get("empty") ?? [];
      const usableMs = median(all.map(({ usable }) => usable));
      const shownMs = median(all.map(({ shown }) => shown));
      return { start, bar, shownMs, usableMs, ratio: usableMs / emptyMs };
    });
  } finally {
    await stage.display.stop();
    await rm(root, { recursive: true, force: true, maxRetries: 5 });
    await rm(linked, { recursive: true, force: true, maxRetries: 5 });
  }
}

async function makeStores(folders: readonly string[], megabytes: number): Promise<void> {
  const [, small = "", ...large] = folders;
  await makeHeldStore(join(small, store), 50);
  const [first = small, ...others] = large;
  if (megabytes !== 50) await makeHeldStore(join(first, store), megabytes);
  for (const folder of others) cpSync(first, folder, { recursive: true });
  if (megabytes === 50) cpSync(small, first, { recursive: true });
}

/** Leaves the store as a program does that ends once the log was laid over the file, and before the log was emptied. */
function cutInCheckpoint(folder: string): void {
  const aside = join(folder, "aside");
  const file = join(folder, store);
  const parts = ["-wal", "-tally"];
  if (!existsSync(aside)) {
    mkdirSync(aside);
    const open = openStore({ file });
    open.write([], (db) => db.exec("UPDATE day SET rest_minutes = 60 - rest_minutes"));
    for (const part of parts) copyFileSync(`${file}${part}`, join(aside, part));
    bringLogIn(connectionOf(open.db));
    for (const part of ["", "-seal"]) copyFileSync(`${file}${part}`, join(aside, `file${part}`));
    open.close();
  }
  for (const part of parts) copyFileSync(join(aside, part), `${file}${part}`);
  for (const part of ["", "-seal"]) copyFileSync(join(aside, `file${part}`), `${file}${part}`);
}

/** Starts a program, waits until it can be used, and ends it as a power cut would. */
async function startedOnce(stage: Stage, executable: string, folder: string): Promise<Took> {
  const { runtime, display } = stage;
  const own = { TAPELINE_TEST_SCRIPT: watch, BENCH_BEGUN: String(Date.now()) };
  const program = spawn(executable, [...runtime.args, ...display.args], {
    env: { ...environment(stage, folder), ...own },
    stdio: ["ignore", "pipe", "ignore"],
  });
  try {
    return await toldBy(program);
  } finally {
    program.kill("SIGKILL");
    if (program.exitCode === null && program.signalCode === null) await once(program, "exit");
  }
}

function toldBy(program: ChildProcess): Promise<Took> {
  return new Promise((resolve, reject) => {
    let text = "";
    program.once("exit", (code) => reject(new Error(`The program ended by itself (${code}): ${text}`)));
    program.stdout?.on("data", (more) => {
      text += more;
      const at = (what: string) => Number(new RegExp(`^bench ${what} (\\d+)$`, "m").exec(text)?.[1]);
      const took = { shown: at("shown"), usable: at("usable") };
      if (!Number.isNaN(took.shown + took.usable)) resolve(took);
    });
  });
}

function median(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;
}
