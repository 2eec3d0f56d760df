import { type Browser, expect, type Locator, type Page } from "@playwright/test";
import { freePort } from "../network/table.ts";
import { openDevice } from "./browsers.ts";
import { deviceSizes } from "./device-screens.ts";
import { joinAs, test } from "./devices.ts";
import { notInSight } from "./in-sight.ts";
import { heatOf, openLive } from "./live.ts";
import { callDoor } from "./page.ts";
import type { Tapeline } from "./session.ts";

/** The quadrant jump live on a phone and a tablet, two lanes, with fingers alone. */

const short = { agility: { crossSize: 914, seconds: 5, touchPenalty: 0.5 } };
const button = (page: Page, name: string | RegExp) => page.getByRole("button", { name });
const settledMs = 900;

async function openJump({ desk }: Tapeline, chromium: Browser, [width, height]: readonly [number, number]) {
  await openLive(desk, "agility", 4, short);
  const port = await freePort();
  await callDoor(desk, "network.turnOn", { address: "127.0.0.1", port });
  await desk.evaluate(() => {
    location.hash = "/devices";
  });
  const { page } = await openDevice(chromium, width, height, { isMobile: true });
  await joinAs(desk, { page }, `https://127.0.0.1:${port}/`, "Red phone", "Agility");
  await button(page, /^Call the next/).tap();
  const initials = page.getByRole("dialog").getByRole("textbox");
  await initials.fill("QA");
  await initials.press("Enter");
  await expect(button(page, /^Start the count-in/)).toBeVisible();
  return page;
}

/** The stage alone, without the lanes and what is done with the heat. */
const stage = "[data-test=agility] [data-test=agility]";

/** Where each of some elements is, in whole px. */
const placesOf = (all: Locator) =>
  all.evaluateAll((some) =>
    some.map((each) => {
      const { x, y, width, height } = each.getBoundingClientRect();
      return [x, y, width, height].map(Math.round).join(" ");
    }),
  );

for (const size of [deviceSizes[0], deviceSizes[1]]) {
  test(`a quadrant jump on ${size.join(" x ")} has its keys in sight and in one place, whose they are on them, and no late tap saves`, async ({
    tapeline,
    chromium,
  }) => {
    const page = await openJump(tapeline, chromium, size);
    const inStage = (selector: string) => page.locator(`${stage} ${selector}`);
    const [tapped, digits, save] = [
      inStage("[data-size=huge]"),
      inStage("fieldset button"),
      button(page, /^(Next|Save the trial|No, change it)/),
    ];
    const look = async (state: string) =>
      expect.soft(await notInSight(page, `${stage} :is(h2, button, [role=timer])`), state).toEqual([]);
    const counted = async () =>
      (await heatOf(page, "agility")).events.some(({ kind }) => kind === "count" || kind === "take");
    await page.waitForTimeout(settledMs);
    await look("before");
    await button(page, /^Start the count-in/).tap();
    await expect(page.getByText("Get ready")).toBeVisible({ timeout: 10_000 });
    await page.waitForTimeout(settledMs);
    await look("count-in");
    expect.soft(await notInSight(page, `${stage} p.measure`)).toEqual([]);
    expect
      .soft(await tapped.allTextContents())
      .toEqual([expect.stringMatching(/^Landing1 Skater 1/), expect.stringMatching(/^Line touch1 Skater 1/)]);
    const [pair, lost] = [await placesOf(tapped), await placesOf(button(page, /^False start/))];
    await expect(page.getByText("Seconds left")).toBeVisible();
    for (let tap = 0; tap < 5; tap += 1) await tapped.first().tap();
    await tapped.last().tap();
    const box = await tapped.last().boundingBox();
    await expect(page.getByRole("heading", { name: /^Time!/ })).toBeVisible();
    await page.waitForTimeout(settledMs);
    await look("to be counted");
    expect.soft(await placesOf(tapped)).toEqual(pair);
    expect.soft(await placesOf(button(page, /^False start/))).toEqual(lost);
    // A late tap where the line touches were is a line touch.
    await page.touchscreen.tap((box?.x ?? 0) + 40, (box?.y ?? 0) + 30);
    await expect.soft(inStage("[aria-current=step]")).toHaveText("Line touches2", { timeout: 3_000 });
    const before = [(await placesOf(digits)).slice(0, 4), await placesOf(save)];
    await inStage("button")
      .filter({ hasText: /^Full laps/ })
      .tap();
    for (const digit of ["6", "3", "1"]) {
      const now = await placesOf(digits);
      expect.soft([now.slice(0, 4), await placesOf(save)], `before ${digit}`).toEqual(before);
      await look(`before ${digit}`);
      await digits.filter({ hasText: digit }).tap();
      await page.waitForTimeout(150);
    }
    // The last digit is none that saves.
    await page.waitForTimeout(settledMs);
    expect.soft(await counted()).toBe(false);
    await save.tap();
    await expect.poll(counted).toBe(true);
    const { events } = await heatOf(page, "agility");
    expect(events.find(({ kind }) => kind === "count")?.detail).toEqual({ laps: 6, extra: 3, touches: 1 });
    await page.context().close();
  });
}
