import { randomUUID } from "node:crypto";
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import type { Page } from "@playwright/test";
import { testCodes } from "../../electron/domain/tests/registry.ts";
import { projectFolder } from "../../electron/runtime/host.ts";
import { callDoor } from "../e2e/page.ts";
import { keyFromPaper } from "../e2e/stations.ts";
import { openDemo, readDoor, type Studio } from "./app.ts";
import { takeHidden, takeScenes } from "./board.ts";
import { takePapers } from "./paper.ts";
import { takeBeside, takePlaces } from "./places.ts";
import { go, take, takeOnScreens, takeWhole } from "./take.ts";

/** The demonstration: a busy hall in the middle of its day. */
export async function takeDemo(studio: Studio): Promise<void> {
  const { desk } = studio;
  await openDemo(desk);
  await takePlaces(desk, "demo");
  await go(desk, "/day");
  await takeWhole(desk, "demo-day-whole");
  await takeBeside(desk, "demo");
  await takeTable(desk);
  await takeStations(desk);
  await takeAthlete(desk);
  await takeRehearsal(studio);
  await takePapers(desk);
  await takeWall(studio);
  await go(desk, "/");
  await takeOnScreens(desk, "demo-home");
}

async function takeTable(desk: Page): Promise<void> {
  await go(desk, "/check-in");
  await desk.getByRole("option").first().click();
  await takeOnScreens(desk, "demo-check-in-form");
  await desk.keyboard.press("Control+Enter");
  await take(desk, "fault-check-in-answers-missing");
  await desk.keyboard.press("Alt+n");
  await desk.getByRole("heading", { name: "Add a walk-up" }).waitFor();
  await takeOnScreens(desk, "demo-check-in-walk-up");
}

async function takeStations(desk: Page): Promise<void> {
  for (const test of testCodes) {
    await go(desk, `/station/${test}`);
    await keyFromPaper(desk);
    const waiting = desk.getByRole("region", { name: /Waiting here/ }).getByRole("listitem");
    await waiting.first().getByRole("button").first().click();
    await takeOnScreens(desk, `demo-station-${test}-entry`);
    await desk.getByRole("button", { name: /^Save the result/ }).click();
    await take(desk, `fault-station-${test}`);
  }
  await go(desk, "/station/push-up");
  // The last station's results have gone, too.
  await desk.getByRole("heading", { name: "Cadence push-up" }).waitFor();
  for (const [name, does] of [
    ["correct", /^Correct it: /],
    ["history", /^History of the result/],
  ] as const) {
    await desk.getByRole("button", { name: does }).first().click();
    await desk.getByRole("dialog").waitFor();
    await take(desk, `demo-station-${name}`);
    await desk.keyboard.press("Escape");
  }
}

/** Somebody with two earlier days and all five tests of this one. */
async function takeAthlete(desk: Page): Promise<void> {
  await go(desk, "/athletes");
  await desk.getByRole("link", { name: "Chimney Comet" }).click();
  await desk.getByRole("heading", { name: "Consent" }).waitFor();
  await takeWhole(desk, "demo-athlete");
  await desk.getByRole("button", { name: /^Delete/ }).click();
  await desk.getByRole("alertdialog").waitFor();
  await take(desk, "demo-athlete-erase");
  await desk.keyboard.press("Escape");
}

/** A rehearsal with the demonstration's own sheets, one row of which was spoilt. */
async function takeRehearsal({ desk, offer }: Studio): Promise<void> {
  await go(desk, "/rehearsal");
  for (const [kind, name] of [
    ["Roster", "roster"],
    ["Past results", "past"],
    ["Results", "results"],
  ] as const) {
    const sheet = await readFile(join(projectFolder, "resources", "demo", `${name}.csv`), "utf8");
    await offer(`${name}.csv`, name === "roster" ? sheet.replace(",1992,", ",19x2,") : sheet);
    await desk.getByRole("button", { name: `Choose the file: ${kind}`, exact: true }).click();
    await desk.getByText(`${name}.csv`, { exact: true }).waitFor();
  }
  await take(desk, "demo-rehearsal-chosen");
  await desk.getByRole("button", { name: "Rehearse the day" }).click();
  await desk.getByRole("heading", { name: "Result", exact: true }).waitFor({ timeout: 30_000 });
  await take(desk, "demo-rehearsal-done");
  await takeWhole(desk, "demo-rehearsal-whole");
}

async function takeWall({ desk, board: openBoard }: Studio): Promise<void> {
  await enterClearGain(desk);
  const board = await openBoard();
  await board.clock.install();
  await takeScenes(board, "demo-board", [1920, 1080]);
  await takeScenes(board, "demo-board-1024", [1024, 768]);
  await takeHidden(desk, board, "demo-board-hidden");
}

/** The newest best of the hall: somebody who waits at the quadrant jump and is shown by name. */
async function enterClearGain(desk: Page): Promise<void> {
  const floor = await readDoor<{ who: { athleteId: number; name: string } }[]>(desk, "day.floor");
  const jumper = floor.find(({ who }) => who.name === "Ember & Ash");
  if (jumper === undefined) throw new Error("Ember & Ash is not on the demonstration's floor.");
  const attempts = [
    { direction: "cw", laps: 7, extra: 1, touches: 0 },
    { direction: "ccw", laps: 7, extra: 2, touches: 0 },
  ].map((seen) => ({ id: randomUUID(), seen }));
  const { athleteId } = jumper.who;
  const entry = { athleteId, test: "agility", variant: "", attempts, by: "QA", sure: true };
  await callDoor(desk, "station.enter", entry);
}
