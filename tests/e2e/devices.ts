import type { Browser, Page } from "@playwright/test";
import { freePort } from "../network/table.ts";
import { type Device, startChromium } from "./browsers.ts";
import { test as base } from "./fixture.ts";
import { letIn, readCode } from "./joining.ts";
import { callDoor } from "./page.ts";
import type { Tapeline } from "./session.ts";

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

/** Opens the demo's day and turns the switch on, for this machine alone. */
export async function openTable({ desk }: Tapeline): Promise<string> {
  await desk.getByRole("button", { name: "Open the demo" }).click();
  await desk.getByRole("heading", { name: "Overview of the day" }).waitFor();
  const port = await freePort();
  await callDoor(desk, "network.turnOn", { address: "127.0.0.1", port });
  await desk.getByRole("link", { name: "Screens at the stations" }).click();
  await desk.getByRole("heading", { name: "Let a device join" }).waitFor();
  return `https://127.0.0.1:${port}/`;
}

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
