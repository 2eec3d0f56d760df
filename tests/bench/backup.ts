import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { monitorEventLoopDelay } from "node:perf_hooks";
import { setTimeout as wait } from "node:timers/promises";
import { createKeeper } from "../../electron/backups/keeper.ts";
import { quantile } from "../../electron/domain/statistics/quantile.ts";
import { backupsApart } from "../../electron/host/backup-work.ts";
import { openStore } from "../../electron/store/connection/open.ts";
import { makeHeldStore } from "./held-store.ts";
import { entererOf } from "./tail.ts";

/** What entries took while a backup was made, and while none was, in ms. */
interface BackupBench {
  readonly tookMs: number;
  readonly entries: number;
  readonly during: { readonly median: number; readonly p999: number; readonly worst: number };
  readonly quiet: { readonly median: number; readonly p999: number; readonly worst: number };
  /** The longest that this thread did nothing else. */
  readonly pauseMs: number;
  /** The most memory beyond what there was before, in bytes. */
  readonly moreBytes: number;
}

const barMs = 50;
const barBytes = 100e6;
/** Ms between two entries: far more than a hall has. */
const apart = 10;

/** `-- backup MEGABYTES`: entries while a store of that size is backed up. */
export async function backupLines(megabytes = 50): Promise<string[]> {
  const { tookMs, entries, during, quiet, pauseMs, moreBytes } = await backupBench(megabytes);
  const kept = (is: boolean) => (is ? "kept" : "NOT KEPT");
  const write = (spread: BackupBench["quiet"]) =>
    `median ${spread.median.toFixed(1)} ms, p99.9 ${spread.p999.toFixed(1)} ms, worst ${spread.worst.toFixed(1)} ms`;
  return [
    `${megabytes} MB in ${(tookMs / 1000).toFixed(1)} s: ${entries} entries, ${write(during)} (${kept(during.worst <= barMs)})`,
    `  without a backup: ${write(quiet)}; the longest pause of the desk's thread ${pauseMs.toFixed(1)} ms`,
    `  memory: ${(moreBytes / 1e6).toFixed(0)} MB more (${kept(moreBytes <= barBytes)})`,
  ];
}

/** Enters at a pace, first alone and then while the store is backed up as the program does it. */
async function backupBench(megabytes: number): Promise<BackupBench> {
  const folder = mkdtempSync(join(tmpdir(), "tapeline-backup-"));
  const file = join(folder, "tapeline.sqlite");
  await makeHeldStore(file, megabytes);
  const store = openStore({ file });
  try {
    const keeper = createKeeper({
      ...{ location: { file }, work: backupsApart(), own: () => store, networkKey: () => null },
      ...{ now: () => new Date("2026-11-14T09:00:00Z"), ms: () => 0 },
    });
    const next = entererOf(store);
    const enterWhile = async (goesOn: () => boolean): Promise<number[]> => {
      const times: number[] = [];
      while (goesOn()) {
        next.prepare();
        const planned = performance.now() + apart;
        await wait(apart);
        next.enter();
        // From when it was planned: what held this thread up held the entry up.
        times.push(performance.now() - planned);
      }
      return times;
    };
    const until = performance.now() + 3_000;
    const alone = await enterWhile(() => performance.now() < until);
    const [before, delay] = [process.memoryUsage.rss(), monitorEventLoopDelay({ resolution: 1 })];
    let [most, isOver] = [before, false];
    const looking = setInterval(() => {
      most = Math.max(most, process.memoryUsage.rss());
    }, 20);
    delay.enable();
    const start = performance.now();
    const backup = keeper.run().finally(() => {
      isOver = true;
    });
    const meanwhile = await enterWhile(() => !isOver);
    await backup;
    const tookMs = performance.now() - start;
    delay.disable();
    clearInterval(looking);
    const { trouble } = keeper.news("own");
    if (trouble !== null) throw new Error(`No backup was made: ${JSON.stringify(trouble)}`);
    const pauseMs = delay.max / 1e6;
    const entries = meanwhile.length;
    return {
      tookMs,
      entries,
      during: spread(meanwhile),
      quiet: spread(alone),
      pauseMs,
      moreBytes: most - before,
    };
  } finally {
    store.close();
    rmSync(folder, { recursive: true });
  }
}

function spread(times: readonly number[]): BackupBench["quiet"] {
  return { median: quantile(times, 0.5), p999: quantile(times, 0.999), worst: Math.max(...times) };
}
