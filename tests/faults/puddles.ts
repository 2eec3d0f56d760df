import { mkdir, mkdtemp, readdir, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { isDeepStrictEqual } from "node:util";
import { unpackBackup } from "../../electron/backups/file.ts";
import { restoreStore } from "../../electron/backups/restore.ts";
import { chanceOf } from "./orders.ts";
import { type KeptRows, startTable } from "./table-process.ts";
import { settle, startHall, type TrialHall, type Verdict } from "./trial-hall.ts";

/** Two devices at the plank, of which each may correct what the other entered. */
const tests = ["push-up", "agility", "vertical", "core", "core"] as const;
/** Of 100 entries, how many correct or take back an earlier one. */
const mends = 20;

interface PuddleOrders {
  readonly pages: string;
  readonly seed: number;
  readonly entries: number;
  /** Longest time that the table is away, in ms. */
  readonly awayMs: number;
  readonly limitMs: number;
}

interface Puddle extends Verdict {
  readonly said: string;
  /** True where all marks are those of the same entries at a table that nothing happened to. */
  readonly equal: boolean;
}

/** The table is killed and its folder deleted at a random moment after a backup at another one. */
export async function tryPuddle({ pages, seed, entries, awayMs, limitMs }: PuddleOrders): Promise<Puddle> {
  const chance = chanceOf(seed);
  // The first numbers of neighbouring seeds lie close to each other.
  for (let skipped = 0; skipped < 3; skipped += 1) chance();
  const hall = await startHall(pages, { seed, athletes: entries, tests, mends });
  const stick = await mkdtemp(join(tmpdir(), "tapeline-stick-"));
  try {
    const backup = Math.floor(chance() * (entries - 20));
    const end = backup + Math.floor(chance() * (entries - backup));
    await hall.enter(backup, 4);
    await backUp(hall, stick);
    await hall.enter(end - backup, 4);
    await wait(chance() * 100);
    await hall.table.kill();
    await rm(hall.orders.folder, { recursive: true });
    await hall.enter(entries - end, 4);
    await wait(chance() * awayMs);
    await comeBack(hall, stick);
    const verdict = await settle(hall, limitMs);
    const equal = isDeepStrictEqual(inOrder(verdict.kept), inOrder(await undisturbed(hall, pages, limitMs)));
    return { ...verdict, equal, said: `backup at ${backup}, end at ${end}` };
  } finally {
    await hall.close();
    await rm(stick, { recursive: true, force: true });
  }
}

/** @throws where the backup could not be made */
export async function backUp(hall: TrialHall, stick: string): Promise<void> {
  const trouble = await hall.table.ask<string | null>({ ask: "backup", stick });
  if (trouble !== null) throw new Error(`No backup: ${trouble}`);
}

/** Starts the table again on the store of the stick's newest backup, in a new folder, as going back to a backup does. */
export async function comeBack(hall: TrialHall, stick: string): Promise<void> {
  const { folder } = hall.orders;
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
  hall.table = await startTable(hall.orders);
}

/** The same entries in the same order by the same devices' ways at a table that nothing happens to. */
async function undisturbed(hall: TrialHall, pages: string, limitMs: number): Promise<KeptRows> {
  const athletes = hall.orders.athletes;
  const calm = await startHall(pages, { seed: 1, athletes, tests, mends: 0 });
  try {
    for (const [at, item] of hall.entered.entries()) {
      const page = calm.devices[at % calm.devices.length];
      await page?.evaluate((one) => window.device?.enterThere(one), item);
    }
    calm.entered.push(...hall.entered);
    const { kept, lost } = await settle(calm, limitMs);
    if (lost > 0) throw new Error(`${lost} entries are not at the table to compare with.`);
    return kept;
  } finally {
    await calm.close();
  }
}

/** Marks without the number that says when they appeared. */
function inOrder({ marks }: KeptRows): string[] {
  return marks.map((mark) => JSON.stringify({ ...mark, seq: 0 })).sort();
}
