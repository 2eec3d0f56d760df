import { mkdtemp, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "@playwright/test";
import { send } from "../bench/windows.ts";
import { boardDay } from "../door/board-day.ts";
import { crowd } from "../door/crowd.ts";
import { closeApp, type Launched, launchApp, pageOf, prepareStage } from "../e2e/launch.ts";
import { athletes, entries, entryOf } from "./soak-day.ts";
import { type Held, held } from "./soak-memory.ts";
import { type Timed, tell } from "./soak-told.ts";
import { countedAt, hearErrors, openStations, watchCount } from "./soak-windows.ts";

/**
 * `npm run soak [-- SECONDS]`: an hour of a large day, twenty times as fast: 300 athletes and 1,500 entries into the real
 * program with six windows open, each sent at its planned time whether those before were answered or not, and measured
 * from that time. The program itself has one desk and one board; the four other windows are the desk's page again, opened
 * from outside the program, and stand for whatever else reads again at every change.
 */
const seconds = Number(process.argv[2] ?? 180);
const memoryEveryMs = (seconds * 1000) / 16;

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
    seconds,
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

function logOf(folder: string): Promise<string> {
  return readFile(join(folder, "logs", "tapeline.log"), "utf8");
}

process.exitCode = (await soak()) ? 0 : 1;
