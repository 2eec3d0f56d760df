import { mkdtemp, readFile, rm } from "node:fs/promises";
import { loadavg, tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "@playwright/test";
import { quantile } from "../../electron/domain/statistics/quantile.ts";
import { send } from "../bench/windows.ts";
import { boardDay } from "../door/board-day.ts";
import { crowd } from "../door/crowd.ts";
import { closeApp, type Launched, launchApp, pageOf, prepareStage } from "../e2e/launch.ts";
import { athletes, entries, entryOf } from "./soak-day.ts";
import { grownBy, type Held, held } from "./soak-memory.ts";
import { countedAt, hearErrors, openStations, watchCount } from "./soak-windows.ts";

/**
 * `npm run soak [-- SECONDS]`: an hour of a large day, twenty times as fast: 300 athletes and 1,500 entries into the real
 * program with six windows open, each sent at its planned time whether those before were answered or not, and measured
 * from that time. The program itself has one desk and one board; the four other windows are the desk's page again, opened
 * from outside the program, and stand for whatever else reads again at every change.
 */
const seconds = Number(process.argv[2] ?? 180);
const memoryEveryMs = (seconds * 1000) / 16;

interface Timed {
  readonly planned: number;
  readonly sent: number;
  readonly answered: number;
}

async function soak(): Promise<boolean> {
  const folder = await mkdtemp(join(tmpdir(), "tapeline-soak-"));
  const stage = await prepareStage();
  try {
    const ids = await makeDay(join(folder, "tapeline.sqlite"));
    const launched = await launchApp(stage, folder);
    const errors = hearErrors(launched.app);
    try {
      return await hour(launched, folder, ids, errors);
    } finally {
      await closeApp(launched);
    }
  } finally {
    await stage.display.stop();
    await rm(folder, { recursive: true, force: true, maxRetries: 5 });
  }
}

async function makeDay(file: string): Promise<readonly number[]> {
  const day = await boardDay(crowd(athletes), file);
  for (let bib = 1; bib <= athletes; bib += 1) day.past(bib, "push-up", 20);
  day.desk.close();
  return day.ids;
}

async function hour(
  launched: Launched,
  folder: string,
  ids: readonly number[],
  errors: string[],
): Promise<boolean> {
  const desk = await pageOf(launched.app, "desk");
  await desk.evaluate(() => (window as unknown as { bridge: { openBoard(): unknown } }).bridge.openBoard());
  const board = await pageOf(launched.app, "board");
  await desk.evaluate(() => {
    location.hash = "/day";
  });
  const stations = await openStations(launched.app);
  await board.waitForTimeout(2_000);
  await watchCount(board);
  const pages = [desk, board, ...stations];
  const [times, samples] = await Promise.all([load(desk, ids), watchMemory(launched, pages)]);
  await board.waitForTimeout(2_000);
  return tell({
    times,
    painted: await countedAt(board),
    samples,
    errors,
    log: await logOf(folder),
    printed: launched.printed(),
  });
}

/** Sends every entry at its planned time; a slow answer holds up none of those after it. */
async function load(desk: Page, ids: readonly number[]): Promise<Timed[]> {
  const start = performance.timeOrigin + performance.now() + 1_000;
  const all = Array.from({ length: entries }, async (_none, index) => {
    const planned = start + (index * seconds * 1000) / entries;
    await new Promise((resolve) =>
      setTimeout(resolve, planned - (performance.timeOrigin + performance.now())),
    );
    return { planned, ...(await send(desk, entryOf(ids, index))) };
  });
  return Promise.all(all);
}

async function watchMemory(launched: Launched, pages: readonly Page[]): Promise<Held[]> {
  const samples: Held[] = [];
  const look = await held(launched.app, pages);
  for (let count = 0; count < 16; count += 1) {
    await new Promise((resolve) => setTimeout(resolve, memoryEveryMs));
    samples.push(await look());
  }
  return samples;
}

async function logOf(folder: string): Promise<string> {
  return readFile(join(folder, "logs", "tapeline.log"), "utf8").catch(() => "");
}

interface Outcome {
  readonly times: readonly Timed[];
  readonly painted: readonly { readonly count: number; readonly at: number }[];
  readonly samples: readonly Held[];
  readonly errors: readonly string[];
  readonly log: string;
  readonly printed: string;
}

function tell({ times, painted, samples, errors, log, printed }: Outcome): boolean {
  const inOrder = times.toSorted((a, b) => a.answered - b.answered);
  const onBoard = inOrder.map((_time, index) => painted.find(({ count }) => count > index)?.at ?? Number.NaN);
  const missing = onBoard.filter(Number.isNaN).length;
  const shown = inOrder.map((time, index) => ({ ...time, at: onBoard[index] ?? Number.NaN }));
  const seen = shown.filter(({ at }) => !Number.isNaN(at));
  console.log(
    `${times.length} entries of ${athletes} athletes in ${seconds} s, 6 windows; load ${loadavg()
      .map((each) => each.toFixed(1))
      .join(" ")}`,
  );
  spread(
    "sent after its planned time",
    times.map(({ planned, sent }) => sent - planned),
  );
  spread(
    "planned to answered (saved)",
    times.map(({ planned, answered }) => answered - planned),
  );
  spread(
    "planned to painted on the board",
    seen.map(({ planned, at }) => at - planned),
  );
  spread(
    "saved to painted on the board",
    seen.map(({ answered, at }) => Math.max(0, at - answered)),
  );
  console.log(`  ${missing} never painted`);
  const grown = grownBy(samples);
  for (const { what, first, last } of grown) {
    console.log(
      `  ${what}: ${first.toFixed(1)} MB in the first quarter, ${last.toFixed(1)} MB in the last (${(100 * (last / first - 1)).toFixed(1)} %)`,
    );
  }
  const faults = [
    ...errors,
    ...log.split("\n").filter((line) => /error|fault|warn/i.test(line)),
    ...printed.split("\n").filter((line) => /error|fault/i.test(line) && !isOfChromium(line)),
  ];
  for (const fault of faults) console.log(`  FAULT ${fault}`);
  return faults.length === 0 && missing === 0;
}

/** What the browser says of a machine without graphics or a bus; nothing of the program's. */
function isOfChromium(line: string): boolean {
  return /^\[\d+:\d+\/|:ERROR:|dbus|vaapi|gpu/i.test(line);
}

function spread(what: string, values: readonly number[]): void {
  const at = (share: number) => quantile(values, share).toFixed(0);
  console.log(`  ${what}: median ${at(0.5)} ms, p95 ${at(0.95)} ms, p99 ${at(0.99)} ms, most ${at(1)} ms`);
}

process.exitCode = (await soak()) ? 0 : 1;
