import type { Browser, Page } from "@playwright/test";
import type { Browser as Firefox } from "puppeteer-core";
import { type Device, startChromium } from "./browsers.ts";
import { type FirefoxDevice, press, startFirefox, write } from "./firefox.ts";
import { test as base } from "./fixture.ts";
import { beginHere, letIn, readCode } from "./joining.ts";

/** Devices in the system's own browsers, joined to the running program over the network. */

/** Each browser is started for the first test of a worker that names it. */
export const test = base.extend<object, { chromium: Browser; firefox: Firefox }>({
  chromium: [
    // biome-ignore lint/correctness/noEmptyPattern: the runner reads the names of what is wanted from this pattern.
    async ({}, use) => {
      const browser = await startChromium();
      await use(browser);
      await browser.close();
    },
    { scope: "worker", timeout: 600_000 },
  ],
  firefox: [
    // biome-ignore lint/correctness/noEmptyPattern: the runner reads the names of what is wanted from this pattern.
    async ({}, use) => {
      const browser = await startFirefox();
      await use(browser);
      await browser.close();
    },
    { scope: "worker", timeout: 600_000 },
  ],
});

/** Joins as people do: the code from the table's screen, a name, and the organiser's yes. */
export async function joinAs(
  desk: Page,
  { page }: Pick<Device, "page">,
  url: string,
  name: string,
  place: string,
): Promise<void> {
  const shown = await readCode(desk);
  await page.goto(url);
  await page.getByLabel("Code").fill(shown.toLowerCase());
  await page.getByLabel("Name of this device").fill(name);
  await page.getByRole("button", { name: "Ask to join" }).click();
  await page.getByText("Waiting for the organiser's yes.").waitFor();
  await letIn(desk, name, place);
  if (place !== "Big screen") await beginHere(page);
}

/** The same in Firefox. */
export async function joinFirefoxAs(
  desk: Page,
  { page }: Pick<FirefoxDevice, "page">,
  url: string,
  name: string,
  place: string,
): Promise<void> {
  const code = await readCode(desk);
  await page.goto(url);
  await write(page, "Code", code.toLowerCase());
  await write(page, "Name of this device", name);
  await press(page, "Ask to join");
  await letIn(desk, name, place);
  await press(page, "Begin here");
}
