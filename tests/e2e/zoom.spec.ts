import { expect, type Page } from "@playwright/test";
import { resize } from "./board-picture.ts";
import { test } from "./fixture.ts";
import { callDoor } from "./page.ts";

/** A window of 1280 × 800 with everything twice as large: half as many CSS px each way (WCAG 2.2, 1.4.4 and 1.4.10). */
const twice = { width: 640, height: 400 };

const screens = [
  ...[
    "/",
    "/day",
    "/sheets",
    "/check-in",
    "/athletes",
    "/bundle",
    "/instructions",
    "/noise",
    "/study",
    "/rehearsal",
    "/plan",
    "/summary",
    "/cards",
  ],
  ...["/station/push-up", "/station/agility", "/station/vertical", "/station/core", "/station/endurance"],
];

/** What sticks out to the side, where nobody at 200 % finds it without scrolling in two directions. */
async function sticksOut(desk: Page): Promise<string[]> {
  return desk.evaluate(() => {
    const { scrollWidth, clientWidth } = document.documentElement;
    if (scrollWidth <= clientWidth + 1) return [];
    const wide = [...document.querySelectorAll("body *")].filter(
      (element) => element.getBoundingClientRect().right > clientWidth + 1,
    );
    return wide
      .slice(-3)
      .map((element) => `${element.tagName} ${element.className} ${element.textContent?.slice(0, 40)}`);
  });
}

test("with letters twice as large nothing is lost to the side", async ({ tapeline: { desk } }) => {
  await callDoor(desk, "day.openDemo");
  await desk.reload();
  await resize(desk, twice);
  for (const path of screens) {
    await desk.evaluate((hash) => {
      location.hash = hash;
    }, path);
    await expect(desk.locator("main h1").filter({ visible: true }).first()).toBeVisible();
    await desk.waitForFunction(() => document.querySelector('[aria-busy="true"]') === null);
    expect.soft(await sticksOut(desk), path).toEqual([]);
  }
});
