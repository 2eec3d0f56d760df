import { expect, type Locator, type Page } from "@playwright/test";
import { freePort } from "../network/table.ts";
import { callDoor } from "./page.ts";
import type { Tapeline } from "./session.ts";

/** The organiser's part of joining, on the table's own screen: whatever browser the device has. */

/** Opens the demo's day and turns the switch on, for this machine alone. Returns the address for devices. */
export async function openDemoTable({ desk }: Pick<Tapeline, "desk">): Promise<string> {
  await desk.getByRole("button", { name: "Open the demo" }).click();
  await desk.getByRole("heading", { name: "Overview of the day" }).waitFor();
  const port = await freePort();
  await callDoor(desk, "network.turnOn", { address: "127.0.0.1", port });
  await desk.getByRole("link", { name: "Screens at the stations" }).click();
  await desk.getByRole("heading", { name: "Let a device join" }).waitFor();
  return `https://127.0.0.1:${port}/`;
}

/** Turns the switch on, for this machine alone, and shows the screen for devices. Returns their address. */
export async function turnOnHere(desk: Page): Promise<string> {
  const port = await freePort();
  await turnOnAt(desk, port);
  return `https://127.0.0.1:${port}/`;
}

/** The same at a port: that of a table before it. */
export async function turnOnAt(desk: Page, port: number): Promise<void> {
  await callDoor(desk, "network.turnOn", { address: "127.0.0.1", port });
  await desk.evaluate(() => {
    location.hash = "/devices";
  });
  await desk.getByRole("heading", { name: "Let a device join" }).waitFor();
}

/** Shows a code where none is shown, and returns it as it is read from the screen: "K7QM 2RXD". */
export async function readCode(desk: Page): Promise<string> {
  const show = desk.getByRole("button", { name: "Show a code" });
  // Not the key, whose first digits may all be decimal.
  const code = desk.locator("dd").filter({ hasText: /^[0-9A-Z]{4} [0-9A-Z]{4}(?! [0-9a-f]{4} )/ });
  await expect(show.or(code)).toBeVisible();
  if (await show.isVisible()) await show.click();
  return ((await code.textContent()) ?? "").slice(0, 9);
}

/** Chooses a place by its first name: "Core" of "Core: staged plank". */
export async function choosePlace(list: Locator, place: string): Promise<void> {
  const option = list.locator("option").filter({ hasText: new RegExp(`^${place}(?::|$)`) });
  await list.selectOption(await option.getAttribute("value"));
}

/** Says yes to a device that asks, and for what it is used. */
export async function letIn(desk: Page, name: string, place: string): Promise<void> {
  await choosePlace(desk.getByLabel(`Use ${name} for`), place);
  await desk.getByRole("button", { name: "Let it in" }).click();
}

/** Presses, on a device that was let in or got another place, that what it is now was read. */
export async function beginHere(device: Page): Promise<void> {
  await device.getByRole("button", { name: "Begin here" }).click();
  // What was below it comes up; a person looks before pressing that (`useStillness`).
  await device.waitForTimeout(600);
}
