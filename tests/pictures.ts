/**
 * `npm run pictures`: starts the built app on the demo day and on small days of its own, and takes a picture of every
 * screen. All of them go to out/pictures; those that the README shows go to resources/pictures, to be committed.
 */
import { copyFile, mkdir, mkdtemp, rm, stat } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "@playwright/test";
import { projectFolder } from "../electron/runtime/host.ts";
import { closeApp, launchApp, pageOf, prepareStage, type Stage } from "./e2e/launch.ts";
import { callDoor } from "./e2e/page.ts";
import { keyFromPaper } from "./e2e/stations.ts";

const all = join(projectFolder, "out", "pictures");
const shown = join(projectFolder, "resources", "pictures");
const inReadme = ["demo-day", "demo-station-push-up-entry", "demo-board-1"];
/** A picture in the repository may not be larger, in bytes. */
const largest = 250_000;

const places = [
  ["day", "/day"],
  ["sheets", "/sheets"],
  ["check-in", "/check-in"],
  ["station-push-up", "/station/push-up"],
  ["station-agility", "/station/agility"],
  ["station-vertical", "/station/vertical"],
  ["station-core", "/station/core"],
  ["station-endurance", "/station/endurance"],
  ["athletes", "/athletes"],
  ["bundle", "/bundle"],
] as const;

/** Gives a page the size that it has on such a screen. */
async function resize(page: Page, width: number, height: number): Promise<void> {
  const session = await page.context().newCDPSession(page);
  await session.send("Emulation.setDeviceMetricsOverride", {
    width,
    height,
    deviceScaleFactor: 1,
    mobile: false,
  });
}

/** Pictures show what stands still. */
async function take(page: Page, name: string): Promise<void> {
  await page.mouse.move(0, 0);
  // Data comes, fonts come, and what moves has come to rest.
  await page.waitForFunction(() => document.querySelector('[aria-busy="true"]') === null);
  await page.waitForTimeout(400);
  await page.screenshot({ path: join(all, `${name}.png`), animations: "disabled", caret: "hide" });
  console.log(name);
}

async function go(desk: Page, path: string): Promise<void> {
  await desk.evaluate((hash) => {
    location.hash = hash;
  }, path);
  await desk.locator("main h1").filter({ visible: true }).waitFor();
}

async function takePlaces(desk: Page, prefix: string): Promise<void> {
  for (const [name, path] of places) {
    await go(desk, path);
    await take(desk, `${prefix}-${name}`);
  }
}

/** The screens in use: somebody at the table, somebody at each station, and one athlete's page. */
async function takeInUse(desk: Page): Promise<void> {
  await go(desk, "/check-in");
  await desk.getByRole("option").first().click();
  await take(desk, "demo-check-in-form");
  for (const [name, path] of places.filter(([each]) => each.startsWith("station"))) {
    await go(desk, path);
    await keyFromPaper(desk);
    const waiting = desk.getByRole("region", { name: /Waiting here/ }).getByRole("listitem");
    await waiting.first().getByRole("button").first().click();
    await take(desk, `demo-${name}-entry`);
  }
  await go(desk, "/athletes/1");
  await take(desk, "demo-athlete");
}

/** Every live tool, gathered and under way, on the three screens that stations have. */
async function takeLive(desk: Page): Promise<void> {
  const screens = [
    [1280, 800],
    [1920, 1080],
    [1024, 768],
  ] as const;
  const started = { "push-up": 9_000, agility: 0, vertical: 0, core: 57_000, endurance: 65_000 };
  for (const [test, startedAgoMs] of Object.entries(started)) {
    await go(desk, `/station/${test}`);
    await desk.getByRole("button", { name: /^Call the next/ }).click();
    const initials = desk.getByRole("dialog").getByRole("textbox");
    const called = desk.getByRole("button", { name: /^(Start \d|End this heat)/ });
    await initials.or(called).first().waitFor();
    if (await initials.isVisible()) {
      await initials.fill("QA");
      await initials.press("Enter");
    }
    await desk.waitForTimeout(400);
    await take(desk, `live-${test}-gathered`);
    if (startedAgoMs > 0) {
      const input = encodeURIComponent(JSON.stringify({ test }));
      const answer = await desk.evaluate(
        (sent) => fetch(`/trpc/heat.view?input=${sent}`).then((response) => response.json()),
        input,
      );
      await callDoor(desk, "heat.start", { heatId: answer.result.data.heat.heatId, startedAgoMs });
      await desk.getByRole("button", { name: /^End this heat/ }).waitFor();
      await desk.keyboard.press("1");
    }
    for (const [width, height] of screens) {
      await resize(desk, width, height);
      await take(desk, `live-${test}-${width}`);
    }
    await resize(desk, 1280, 800);
  }
}

async function takeBoard(board: Page): Promise<void> {
  await resize(board, 1920, 1080);
  await board.clock.install();
  await board.reload();
  await board.getByRole("heading", { level: 1 }).waitFor();
  for (const scene of [1, 2, 3, 4]) {
    await take(board, `demo-board-${scene}`);
    await board.clock.fastForward(15_000);
  }
}

/** Runs `work` on an app with a data folder of its own. */
async function withApp(stage: Stage, work: (desk: Page, board: () => Promise<Page>) => Promise<void>) {
  const folder = await mkdtemp(join(tmpdir(), "tapeline-pictures-"));
  const launched = await launchApp(stage, folder);
  try {
    const desk = await pageOf(launched.app, "desk");
    await resize(desk, 1280, 800);
    await work(desk, async () => {
      await desk.getByRole("button", { name: "Open the board" }).click();
      return pageOf(launched.app, "board");
    });
  } finally {
    await closeApp(launched);
    await rm(folder, { recursive: true, force: true, maxRetries: 5 });
  }
}

async function threeAthletes(desk: Page): Promise<void> {
  await callDoor(desk, "day.create", { date: "2026-03-14", title: "Three of us" });
  await callDoor(desk, "day.open");
  for (const [index, name] of ["Anvil Sparrow", "Brine Kestrel", "Cinder Plover"].entries()) {
    const outcome = {
      bib: index + 1,
      leaveOut: [],
      board: "name",
      share: true,
      guardianConsent: false,
      by: "QA",
    };
    const who = { league: "Gravel Moon", name, number: `${index + 7}`, birthYear: 1995 };
    await callDoor(desk, "checkIn.walkUp", { ...who, ...outcome });
  }
}

const stage = await prepareStage();
await rm(all, { recursive: true, force: true });
await mkdir(all, { recursive: true });
await mkdir(shown, { recursive: true });
try {
  await withApp(stage, async (desk, board) => {
    await take(desk, "empty-home");
    await callDoor(desk, "day.create", { date: "2026-03-14", title: "Nobody yet" });
    await desk.reload();
    await takePlaces(desk, "empty");
    await take(await board(), "empty-board");
  });
  await withApp(stage, async (desk) => {
    await threeAthletes(desk);
    await desk.reload();
    await takePlaces(desk, "three");
  });
  await withApp(stage, async (desk, board) => {
    await desk.getByRole("button", { name: "Open the demo day" }).click();
    await desk.getByRole("heading", { name: "Day overview" }).waitFor();
    await takePlaces(desk, "demo");
    await takeInUse(desk);
    await takeBoard(await board());
  });
  await withApp(stage, async (desk) => {
    await desk.getByRole("button", { name: "Open the demo day" }).click();
    await desk.getByRole("heading", { name: "Day overview" }).waitFor();
    await takeLive(desk);
  });
  for (const name of inReadme) {
    const file = join(all, `${name}.png`);
    const { size } = await stat(file);
    if (size > largest) throw new Error(`${name}.png has ${size} bytes, more than ${largest}.`);
    await copyFile(file, join(shown, `${name}.png`));
  }
} finally {
  await stage.display.stop();
}
