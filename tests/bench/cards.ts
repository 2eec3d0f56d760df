import { mkdtemp, rm, stat } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { ElectronApplication, Page } from "@playwright/test";
import type { Bridge } from "../../electron/shell/bridge/bridge-types.ts";
import { crowdedDay } from "../door/crowd.ts";
import { closeApp, launchApp, pageOf, prepareStage } from "../e2e/launch.ts";
import { readPdf } from "../e2e/pdf.ts";

/** One PDF of everybody's cards, as the desk's page asks for it. */
export interface CardsBench {
  readonly paper: "a5" | "a4-two";
  readonly cards: number;
  readonly pages: number;
  readonly tookMs: number;
  /** Until the last card was laid out; the rest is writing the file. */
  readonly laidOutMs: number;
  readonly bytes: number;
  /** How often the count of cards went up while somebody watched. */
  readonly steps: number;
  /** The longest that the desk's page did nothing, and that it waited for an answer, while the job ran. */
  readonly longestGapMs: number;
  readonly longestAnswerMs: number;
}

const athletes = 120;
export const cardsTargetMs = 30_000;

/** Everybody has five tests today and two days before, so that every card has all of its pictures. */
export async function cardsBench(): Promise<readonly CardsBench[]> {
  const folder = await mkdtemp(join(tmpdir(), "tapeline-cards-"));
  const stage = await prepareStage();
  try {
    const day = await crowdedDay(athletes, join(folder, "tapeline.sqlite"));
    day.desk.close();
    const launched = await launchApp(stage, folder);
    try {
      const desk = await pageOf(launched.app, "desk");
      const path = `/print/cards/${day.dayId}/all`;
      const upright = await saveCards(launched.app, desk, path, "a5", join(folder, "a5.pdf"));
      return [upright, await saveCards(launched.app, desk, path, "a4-two", join(folder, "two.pdf"))];
    } finally {
      await closeApp(launched);
    }
  } finally {
    await stage.display.stop();
    await rm(folder, { recursive: true, force: true, maxRetries: 5 });
  }
}

async function saveCards(
  app: ElectronApplication,
  desk: Page,
  path: string,
  paper: CardsBench["paper"],
  file: string,
): Promise<CardsBench> {
  await app.evaluate(({ dialog }, filePath) => {
    Object.assign(dialog, { showSaveDialog: async () => ({ canceled: false, filePath }) });
  }, file);
  const { saved, ...measured } = await desk.evaluate(measure, [path, paper] as const);
  if (!saved) throw new Error("The cards were not saved.");
  const pages = (await readPdf(file)).length;
  return { paper, cards: athletes, pages, bytes: (await stat(file)).size, ...measured };
}

/** Runs in the desk's page, so it sees nothing around it: asks for the file and watches the page meanwhile. */
async function measure([path, paper]: readonly [string, CardsBench["paper"]]) {
  const { bridge } = window as unknown as { bridge: Bridge };
  let [steps, done, laidOutMs, longestGapMs, longestAnswerMs] = [0, 0, 0, 0, 0];
  let running = true;
  const start = performance.now();
  const job = bridge.savePdf({ path, paper, suggestedName: "x.pdf" }).then(({ saved }) => {
    running = false;
    return { saved, tookMs: performance.now() - start };
  });
  async function watchFrames(): Promise<void> {
    let before = performance.now();
    while (running) {
      await new Promise((resolve) => setTimeout(resolve, 10));
      const now = performance.now();
      longestGapMs = Math.max(longestGapMs, now - before - 10);
      before = now;
    }
  }
  async function watchDoor(): Promise<void> {
    while (running) {
      const asked = performance.now();
      await fetch("/trpc/day.current").then((response) => response.json());
      longestAnswerMs = Math.max(longestAnswerMs, performance.now() - asked);
      const progress = await bridge.paperProgress();
      if (progress !== null && progress.done > done) [done, steps] = [progress.done, steps + 1];
      if (progress?.phase === "file" && laidOutMs === 0) laidOutMs = performance.now() - start;
      await new Promise((resolve) => setTimeout(resolve, 50));
    }
  }
  await Promise.all([watchFrames(), watchDoor()]);
  return { ...(await job), steps, laidOutMs, longestGapMs, longestAnswerMs };
}
