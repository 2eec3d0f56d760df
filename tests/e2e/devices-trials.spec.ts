import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "@playwright/test";
import { reportPlanks } from "../faults/plank-report.ts";
import { runPlanks } from "../faults/planks.ts";
import { backUp, comeBack, tryPuddle } from "../faults/puddles.ts";
import { reportTakeovers } from "../faults/takeover-report.ts";
import { tryTakeovers } from "../faults/takeovers.ts";
import { buildDevicePage, settle, startHall } from "../faults/trial-hall.ts";

/**
 * The short form of `npm run faults:network`: a table in a process of its own, devices in Chromium, and the fault proxy
 * between. All in real time, since it is clocks and networks that are tried.
 */

let pages = "";
test.beforeAll(async () => {
  pages = await buildDevicePage();
});
test.afterAll(() => rm(pages, { recursive: true }));

test("a heat that starts through a network with mishaps: its start, a second screen's clock, and a starter's that stays", async () => {
  const network = "hall";
  const orders = { pages, count: 8, seed: 4, lanes: 4, network } as const;
  const { wrong, lines } = reportTakeovers(await tryTakeovers(orders), network);
  console.log(lines.join("\n"));
  expect(wrong).toEqual([]);
});

test("a plank with a dead network in its middle: cues, seconds and marks as without", async () => {
  const plan = { stopsMs: [4_500, 9_500, 15_500], deadFromMs: 1_500, deadForMs: 10_000 };
  const { wrong, lines } = reportPlanks(await runPlanks(plan, ["none", "held", "silent"]));
  console.log(lines.join("\n"));
  expect(wrong).toEqual([]);
});

test("a table that is lost among entries and corrections gets from its devices what its backup lacks", async () => {
  const orders = { pages, seed: 7, entries: 80, awayMs: 1_000, limitMs: 150_000 };
  const { lost, doubled, refused, equal } = await tryPuddle(orders);
  expect({ lost, doubled, refused, equal }).toEqual({ lost: 0, doubled: 0, refused: 0, equal: true });
});

test("a table that is back from its backup before it was missed gets what it lacks at once, not a minute later", async () => {
  const hall = await startHall(pages, { seed: 5, athletes: 16 });
  const stick = await mkdtemp(join(tmpdir(), "tapeline-stick-"));
  try {
    await backUp(hall, stick);
    await hall.enter(16, 4);
    expect((await settle(hall, 60_000)).acknowledged).toBe(16);
    await hall.table.kill();
    await rm(hall.orders.folder, { recursive: true });
    await comeBack(hall, stick);
    // A device compares each minute by itself.
    expect((await settle(hall, 30_000)).lost).toBe(0);
  } finally {
    await hall.close();
    await rm(stick, { recursive: true, force: true });
  }
});
