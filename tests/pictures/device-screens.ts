import type { Page } from "@playwright/test";
import { openDevice, startChromium } from "../e2e/browsers.ts";
import { deviceSizes, walkDevice } from "../e2e/device-screens.ts";
import { walkStates } from "../e2e/device-states.ts";
import { letIn, openDemoTable, readCode } from "../e2e/joining.ts";
import { callDoor } from "../e2e/page.ts";
import type { Studio } from "./app.ts";
import { takePaper } from "./paper.ts";
import { go, take } from "./take.ts";

/** Every screen of a device in both languages at its three sizes, and a television at its own. */
export async function takeDeviceScreens({ desk }: Studio): Promise<void> {
  const url = await openDemoTable({ desk });
  await takeSetUpSheet(desk);
  const browser = await startChromium();
  try {
    const television = await openDevice(browser, 1920, 1080);
    await joinTelevision(desk, television.page, url);
    await take(television.page, "hand-television-en-1920");
    await callDoor(desk, "language.choose", { language: "es" });
    await television.page.locator("html[lang=es]").waitFor();
    await take(television.page, "hand-television-es-1920");
    await callDoor(desk, "language.choose", { language: "en" });
    await television.context.close();
    await callDoor(desk, "network.sendAllAway", {});
    await walkDevice(desk, browser, url, takeAtSizes);
    await callDoor(desk, "network.sendAllAway", {});
    await walkStates(desk, browser, url, takeAtSizes);
  } finally {
    await browser.close();
  }
}

/** With the switch on, in both languages. */
async function takeSetUpSheet(desk: Page): Promise<void> {
  await takePaper(desk, "set-up-on", "/print/set-up/a4");
  await callDoor(desk, "language.choose", { language: "es" });
  await takePaper(desk, "spanish-set-up-on", "/print/set-up/letter");
  await callDoor(desk, "language.choose", { language: "en" });
  await go(desk, "/devices");
}

async function takeAtSizes(page: Page, name: string): Promise<void> {
  for (const [width, height] of deviceSizes) {
    await page.setViewportSize({ width, height });
    await take(page, `hand-${name}-${width}`);
  }
  const [width, height] = deviceSizes[0];
  await page.setViewportSize({ width, height });
}

async function joinTelevision(desk: Page, page: Page, url: string): Promise<void> {
  const code = await readCode(desk);
  await page.goto(url);
  await page.getByLabel("Code").fill(code);
  await page.getByLabel("Name of this device").fill("Hall television");
  await page.getByRole("button", { name: "Ask to join" }).click();
  await letIn(desk, "Hall television", "Big screen");
  await page.locator('html[data-theme="hall"][data-ready="true"]').waitFor();
}
