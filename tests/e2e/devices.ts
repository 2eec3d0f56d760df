import type { Browser, Page } from "@playwright/test";
import { type Device, startChromium } from "./browsers.ts";
import { test as base } from "./fixture.ts";
import { letIn, readCode } from "./joining.ts";

/** Devices in the system's own browser, joined to the running program over the network. */

export const test = base.extend<object, { chromium: Browser }>({
  chromium: [
    // biome-ignore lint/correctness/noEmptyPattern: the runner reads the names of what is wanted from this pattern.
    async ({}, use) => {
      const browser = await startChromium();
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
}
