import { type Browser, expect, type Page } from "@playwright/test";
import { freePort } from "../network/table.ts";
import { expectForEverybody } from "./axe.ts";
import { type Device, openDevice } from "./browsers.ts";
import { joinAs, test } from "./devices.ts";
import { countedKeys, goToLive, heatOf, laneOf, openLive } from "./live.ts";
import { callIn } from "./live-own.ts";
import { callDoor } from "./page.ts";
import type { Tapeline } from "./session.ts";

/** Several heats of one test at once: two devices and the table at the leap, each with lanes of its own. */

const others = (page: Page) => page.getByRole("region", { name: "Other heats of this test" });
const lanes = (page: Page) => page.locator('[data-pace="own"]');

/** Two walls that called two each, at a leap with so many who wait. */
async function openWalls({ desk }: Tapeline, chromium: Browser, waiting: number): Promise<[Device, Device]> {
  await openLive(desk, "vertical", waiting);
  const port = await freePort();
  await callDoor(desk, "network.turnOn", { address: "127.0.0.1", port });
  const join = async (name: string, bibs: readonly number[]) => {
    await desk.evaluate(() => {
      location.hash = "/devices";
    });
    const wall = await openDevice(chromium, 1024, 768);
    await joinAs(desk, wall, `https://127.0.0.1:${port}/`, name, "Power");
    await callIn(wall.page, countedKeys(wall.page), "vertical", bibs);
    return wall;
  };
  return [await join("Red wall", [1, 2]), await join("Blue wall", [3, 4])];
}

async function closeAll(walls: readonly Device[]): Promise<void> {
  for (const { complaints, context } of walls) {
    expect(complaints).toEqual([]);
    await context.close();
  }
}

test("two phones at the leap run a heat each from the one queue, and the table sees both", async ({
  tapeline,
  chromium,
}) => {
  const { desk } = tapeline;
  const walls = await openWalls(tapeline, chromium, 5);
  const [redWall, blueWall] = [walls[0].page, walls[1].page];
  await expect(others(redWall)).toContainText("Blue wall: 3, 4");
  await expect(others(blueWall)).toContainText("Red wall: 1, 2");
  await expect(others(redWall).getByRole("button")).toHaveCount(0);

  // The table has no heat of its own, calls the one who is left, and may look at each.
  await goToLive(desk, "vertical");
  await callIn(desk, countedKeys(desk), "vertical", [5]);
  await expect(others(redWall)).toContainText("The table: 5");
  await desk.getByRole("button", { name: "Show: Red wall" }).click();
  await expect(lanes(desk)).toContainText("Skater 1");
  await expectForEverybody(desk);
  await expectForEverybody(redWall);
  await desk.getByRole("button", { name: "Back to the table's own heat" }).click();
  await expect(lanes(desk)).toContainText("Skater 5");
  await closeAll(walls);
});

test("the overview and the big screen list every running heat of a test", async ({ tapeline, chromium }) => {
  const { desk } = tapeline;
  const walls = await openWalls(tapeline, chromium, 5);
  const board = await tapeline.openBoard();
  await desk.evaluate(() => {
    location.hash = "/day";
  });
  await desk.getByRole("heading", { name: "Overview of the day" }).waitFor();
  await expect(desk.getByText("Red wall, on now: 1, 2")).toBeVisible();
  await expect(desk.getByText("Blue wall, on now: 3, 4")).toBeVisible();
  await expectForEverybody(desk);
  const running = board.getByRole("region", { name: "On now" });
  await expect(running.getByRole("listitem")).toHaveText(["1 2", "3 4"], { timeout: 60_000 });
  await closeAll(walls);
});

test("the table that looks at a device's heat says whose it is, and calls the next ones into its own", async ({
  tapeline,
  chromium,
}) => {
  const { desk } = tapeline;
  const walls = await openWalls(tapeline, chromium, 4);
  const heading = desk.getByRole("heading", { level: 1 });
  await goToLive(desk, "vertical");
  await expect(heading).not.toContainText("Red wall");
  await desk.getByRole("button", { name: "Show: Red wall" }).click();
  await expect(heading).toContainText("heat of Red wall");
  await expect(walls[0].page.getByRole("heading", { level: 1 })).not.toContainText("heat of");
  await expectForEverybody(desk);

  // Both lanes of the red wall are set aside: who is called here now has a heat of the table's own.
  const { heatId } = await heatOf(walls[0].page, "vertical");
  const asides = [1, 2].map((lane) => ({
    id: crypto.randomUUID(),
    lane,
    kind: "aside",
    atMs: 1,
    detail: {},
  }));
  await callDoor(desk, "heat.tap", { heatId, by: "QA", events: asides });
  const next = desk.getByRole("button", { name: /^Call the next/ });
  await expect(next).toBeVisible();
  await next.click();
  await giveInitials(desk);
  await expect(others(walls[1].page)).toContainText("The table: 1, 2");
  await expect(others(desk)).toContainText("Red wall: empty lanes");
  await expect(heading).not.toContainText("heat of");
  expect((await heatOf(walls[0].page, "vertical")).heatId).toBe(heatId);
  await closeAll(walls);
});

/** A device that called two athletes to the push-ups. */
async function openRow({ desk }: Tapeline, chromium: Browser): Promise<{ row: Device; heatId: string }> {
  await openLive(desk, "push-up", 2);
  const port = await freePort();
  await callDoor(desk, "network.turnOn", { address: "127.0.0.1", port });
  await desk.evaluate(() => {
    location.hash = "/devices";
  });
  const row = await openDevice(chromium, 1024, 768);
  await joinAs(desk, row, `https://127.0.0.1:${port}/`, "Red row", "Strength");
  await expect(row.page.getByRole("button", { name: /^Call the next/ })).toBeVisible();
  const heatId = crypto.randomUUID();
  await callDoor(row.page, "heat.gather", { test: "push-up", heatId, lanes: 2, by: "QA" });
  return { row, heatId };
}

/** Counts what the window sounds from now on; returns how to ask for the number. */
async function countSounds(page: Page): Promise<() => Promise<number>> {
  await page.evaluate(() => {
    const { prototype } = AudioScheduledSourceNode;
    const { start } = prototype;
    document.body.dataset.sounds = "0";
    prototype.start = function counted(when?: number) {
      document.body.dataset.sounds = `${Number(document.body.dataset.sounds) + 1}`;
      start.call(this, when);
    };
  });
  return () => page.evaluate(() => Number(document.body.dataset.sounds));
}

test("a heat that sounds at its device is silent at the table that looks on, until that device is gone", async ({
  tapeline,
  chromium,
}) => {
  const { desk } = tapeline;
  const { row, heatId } = await openRow(tapeline, chromium);
  await goToLive(desk, "push-up");
  await desk.getByRole("button", { name: "Show: Red row" }).click();
  await expect(desk.getByText("It sounds at Red row")).toBeVisible();
  await expectForEverybody(desk);
  const sounds = await countSounds(desk);
  await callDoor(row.page, "heat.start", { heatId, startedAgoMs: 0 });
  await expect(laneOf(desk, 1)).toHaveAttribute("data-phase", /./);
  await expect.poll(async () => (await heatOf(row.page, "push-up")).elapsedMs).toBeGreaterThan(4_000);
  expect(await sounds()).toBe(0);

  await callDoor(desk, "network.sendAllAway");
  await expect(desk.getByText("It sounds at Red row")).toHaveCount(0);
  await desk.keyboard.press("Shift");
  await expect.poll(sounds, { timeout: 20_000 }).toBeGreaterThan(0);
  await row.context.close();
});

test("a device that reads the table's clock over a slow network says how far its own may be off", async ({
  tapeline,
  chromium,
}) => {
  const { row, heatId } = await openRow(tapeline, chromium);
  const { page, context } = row;
  await callDoor(page, "heat.start", { heatId, startedAgoMs: 0 });
  const doubt = page.getByText(/This clock may be off by up to \d\.\d s\./);
  await page.reload();
  await expect(laneOf(page, 1)).toHaveAttribute("data-phase", /./);
  await page.waitForTimeout(4_000);
  await expect(doubt).toHaveCount(0);
  // Each answer takes 300 ms or more, alone or asked with others: half of it is above 50 ms, and at least 0.2 s rounded up.
  await page.route("**/*heat.{view,clock}*", async (route) => {
    await new Promise((resolve) => setTimeout(resolve, 300));
    await route.continue();
  });
  await page.reload();
  await expect(doubt).toContainText(/0\.[2-9] s|[1-9]\.\d s/);
  await expectForEverybody(page);
  await context.close();
});

async function giveInitials(desk: Page): Promise<void> {
  const initials = desk.getByRole("dialog").getByRole("textbox");
  await expect(initials.or(others(desk).getByText("Red wall")).first()).toBeVisible();
  if (!(await initials.isVisible())) return;
  await initials.fill("QA");
  await initials.press("Enter");
}
