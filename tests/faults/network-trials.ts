import { mkdir, mkdtemp, readdir, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { isDeepStrictEqual } from "node:util";
import { unpackBackup } from "../../electron/backups/file.ts";
import { restoreStore } from "../../electron/backups/restore.ts";
import { chanceOf } from "./orders.ts";
import { type KeptRows, startTable } from "./table-process.ts";
import { buildDevicePage, settle, startHall, type TrialHall, type Verdict } from "./trial-hall.ts";

/**
 * `npm run faults:network [-- faults|puddle|both [ROUNDS [SEED [SILENT_SECONDS]]]]`: what becomes of entries at devices in
 * Chromium when the network or the table fails. Prints a table, and ends with 1 when anything was lost or doubled.
 */
const [what = "both", ...figures] = process.argv.slice(2);
const [rounds = 20, seed = Date.now() % 1_000_000_000, silentSeconds = 60] = figures.map(Number);
const perFault = 120;
const perPuddle = 400;
const limitMs = 150_000;

interface Trial {
  readonly name: string;
  /** Runs while entries are made, and ends the fault. */
  readonly during: (hall: TrialHall) => Promise<void>;
}

const faults: readonly Trial[] = [
  { name: "none", during: async () => undefined },
  { name: "300 ms late", during: (hall) => under(hall, { delayMs: 300 }, 6) },
  { name: "jitter of 800 ms", during: (hall) => under(hall, { delayMs: 50, jitterMs: 800 }, 6) },
  { name: "connections lost", during: cutOften },
  { name: "half-open sockets", during: abandonTwice },
  { name: "answers lost 6 s", during: loseAnswers },
  { name: `${silentSeconds} s of nothing`, during: (hall) => under(hall, { held: true }, silentSeconds) },
  { name: "slow reads", during: (hall) => under(hall, { slowBytes: 64 }, 8) },
  { name: "table killed", during: killAndStart },
];

async function under({ proxy }: TrialHall, fault: Parameters<TrialHall["proxy"]["set"]>[0], seconds: number) {
  proxy.set(fault);
  await wait(seconds * 1_000);
  proxy.set({});
}

async function cutOften({ proxy }: TrialHall): Promise<void> {
  for (let times = 0; times < 30; times += 1) {
    await wait(100);
    proxy.cut();
  }
}

async function abandonTwice({ proxy }: TrialHall): Promise<void> {
  for (const ms of [300, 2_000]) {
    await wait(ms);
    proxy.abandon();
  }
}

/** The table takes everything, and nobody hears of it. */
async function loseAnswers({ proxy }: TrialHall): Promise<void> {
  proxy.set({ silent: "answers" });
  await wait(6_000);
  proxy.set({});
  proxy.cut();
}

async function killAndStart(hall: TrialHall): Promise<void> {
  for (const ms of [500, 1_500]) {
    await wait(ms);
    await hall.table.kill();
    await wait(1_000);
    hall.table = await startTable(hall.orders);
  }
}

async function tryFault(pages: string, trial: Trial, index: number): Promise<Verdict> {
  const hall = await startHall(pages, seed + index, perFault);
  try {
    await hall.enter(perFault / 4, 5);
    await Promise.all([trial.during(hall), hall.enter((perFault * 3) / 4, 40)]);
    return await settle(hall, limitMs);
  } finally {
    await hall.close();
  }
}

/** The table is killed and its folder deleted at a random moment after a backup at another one. */
async function tryPuddle(
  pages: string,
  round: number,
): Promise<Verdict & { readonly said: string; readonly equal: boolean }> {
  const chance = chanceOf(seed + round * 7_919);
  // The first numbers of neighbouring seeds lie close to each other.
  for (let skipped = 0; skipped < 3; skipped += 1) chance();
  const hall = await startHall(pages, seed + round, perPuddle);
  const stick = await mkdtemp(join(tmpdir(), "tapeline-stick-"));
  try {
    const backup = Math.floor(chance() * (perPuddle - 20));
    const end = backup + Math.floor(chance() * (perPuddle - backup));
    await hall.enter(backup, 4);
    const trouble = await hall.table.ask<string | null>({ ask: "backup", stick });
    if (trouble !== null) throw new Error(`No backup: ${trouble}`);
    await hall.enter(end - backup, 4);
    await wait(chance() * 100);
    await hall.table.kill();
    await rm(hall.orders.folder, { recursive: true });
    await hall.enter(perPuddle - end, 4);
    await wait(chance() * 6_000);
    await bringBack(hall.orders.folder, stick);
    hall.table = await startTable(hall.orders);
    const verdict = await settle(hall, limitMs);
    const equal = isDeepStrictEqual(inOrder(verdict.kept), inOrder(await undisturbed(hall, pages)));
    return { ...verdict, equal, said: `backup at ${backup}, end at ${end}` };
  } finally {
    await hall.close();
    await rm(stick, { recursive: true, force: true });
  }
}

/** Puts the store of the stick's newest backup into a new folder, as going back to a backup does. */
async function bringBack(folder: string, stick: string): Promise<void> {
  const files = (await readdir(stick, { recursive: true, withFileTypes: true })).filter((each) =>
    each.isFile(),
  );
  const [newest] = files
    .filter(({ name }) => !name.startsWith("."))
    .sort((a, b) => b.name.localeCompare(a.name));
  if (newest === undefined) throw new Error("There is no backup on the stick.");
  await mkdir(folder);
  const { store } = await unpackBackup(join(newest.parentPath, newest.name), null);
  restoreStore({ file: join(folder, "tapeline.sqlite") }, store, new Date());
}

/** The same entries by the same devices' ways at a table that nothing happens to. */
async function undisturbed(hall: TrialHall, pages: string): Promise<KeptRows> {
  const calm = await startHall(pages, seed, perPuddle);
  try {
    for (const [index, page] of calm.devices.entries()) {
      const own = hall.entered.filter((_, at) => at % calm.devices.length === index);
      await page.evaluate(async (items) => {
        for (const item of items) await window.device?.enter(item);
      }, own);
    }
    calm.entered.push(...hall.entered);
    return (await settle(calm, limitMs)).kept;
  } finally {
    await calm.close();
  }
}

/** Marks without the number that says when they appeared. */
function inOrder({ marks }: KeptRows): string[] {
  return marks.map((mark) => JSON.stringify({ ...mark, seq: 0 })).sort();
}

let wrong = 0;
function print(name: string, { acknowledged, lost, doubled, refused, seconds }: Verdict, said = ""): void {
  const figuresOf = [acknowledged, lost, doubled, refused].map((each) => String(each).padStart(7));
  console.log(`${name.padEnd(20)}${figuresOf.join("")}${seconds.toFixed(1).padStart(9)} s  ${said}`);
  wrong += lost + doubled + refused;
}

console.log(`Seed ${seed}. Of each: acknowledged, lost, doubled, refused, until all is there again.`);
const pages = await buildDevicePage();
if (what !== "puddle") {
  for (const [index, trial] of faults.entries()) print(trial.name, await tryFault(pages, trial, index));
}
if (what !== "faults") {
  for (let round = 1; round <= rounds; round += 1) {
    const { equal, said, ...verdict } = await tryPuddle(pages, round);
    print(`puddle ${round}`, verdict, `${said}, marks ${equal ? "equal" : "DIFFER"}`);
    if (!equal) wrong += 1;
  }
}
await rm(pages, { recursive: true });
console.log(`${wrong} wrong`);
process.exitCode = wrong === 0 ? 0 : 1;
