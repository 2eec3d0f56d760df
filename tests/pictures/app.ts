import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "@playwright/test";
import { closeApp, type Launched, launchApp, pageOf, type Stage } from "../e2e/launch.ts";
import { callDoor } from "../e2e/page.ts";
import { desktop, resize } from "./take.ts";

/** An app that runs for pictures, on a data folder of its own. */
export interface Studio extends Launched {
  readonly desk: Page;
  readonly folder: string;
  board(): Promise<Page>;
  /** Writes a sheet and lets the next question for a file be answered with it. */
  offer(name: string, content: string | Uint8Array): Promise<void>;
}

/** Runs `work` on an app of its own; `prepare` may fill its folder before it starts. */
export async function withApp(
  stage: Stage,
  work: (studio: Studio) => Promise<void>,
  prepare?: (folder: string) => Promise<void>,
): Promise<void> {
  const folder = await mkdtemp(join(tmpdir(), "tapeline-pictures-"));
  await prepare?.(folder);
  const launched = await launchApp(stage, folder);
  try {
    await work(await openStudio(launched, folder));
  } finally {
    await closeApp(launched);
    await rm(folder, { recursive: true, force: true, maxRetries: 5 });
  }
}

async function openStudio(launched: Launched, folder: string): Promise<Studio> {
  const { app } = launched;
  const desk = await pageOf(app, "desk");
  await resize(desk, desktop);
  return {
    ...launched,
    ...{ desk, folder },
    async board() {
      await desk.evaluate(() => {
        const { bridge } = window as unknown as { bridge: { openBoard(): Promise<void> } };
        return bridge.openBoard();
      });
      return pageOf(app, "board");
    },
    async offer(name, content) {
      const file = join(folder, name);
      await writeFile(file, content);
      await app.evaluate(({ dialog }, path) => {
        Object.assign(dialog, { showOpenDialog: async () => ({ canceled: false, filePaths: [path] }) });
      }, file);
    },
  };
}

/** Opens the demonstration and shows its day. */
export async function openDemo(desk: Page): Promise<void> {
  await callDoor(desk, "day.openDemo");
  await desk.reload();
  await desk.evaluate(() => {
    location.hash = "/day";
  });
  await desk.getByRole("heading", { name: "Overview of the day" }).waitFor();
}

/** Reads through the door, as a page does. */
export async function readDoor<Told>(page: Page, procedure: string, input?: unknown): Promise<Told> {
  const query = input === undefined ? "" : `?input=${encodeURIComponent(JSON.stringify(input))}`;
  const answer = await page.evaluate(
    (path) => fetch(path).then((response) => response.json()),
    `/trpc/${procedure}${query}`,
  );
  return answer.result.data as Told;
}
