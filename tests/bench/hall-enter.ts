import { setTimeout as wait } from "node:timers/promises";
import type { Page } from "@playwright/test";
import { entryOf, fieldOf } from "../e2e/stations.ts";
import { leapOf, type Turn, type TypedEntry } from "./hall-day.ts";
import { enterAt } from "./hall-page.ts";
import type { Device } from "./hall-remote.ts";
import type { AtStation } from "./hall-table.ts";

/** Every device by real keys, one after another. */
export async function byKeys(devices: readonly AtStation[], turns: readonly Turn[]): Promise<void> {
  for (const turn of turns) await typeKeys(deviceOf(devices, turn).page, turn);
}

/** Types an entry by real keys, and the initials where they are asked. */
export async function typeKeys(page: Page, { bib, fields }: TypedEntry): Promise<void> {
  const form = entryOf(page);
  const values = form.locator("fieldset");
  await form.getByRole("textbox", { name: "Bib", exact: true }).fill("");
  await page.keyboard.type(`${bib}`);
  await page.keyboard.press("Enter");
  await values.waitFor();
  for (const [name, typed] of fields) {
    await fieldOf(page, name).and(page.locator(":focus")).waitFor();
    await page.keyboard.type(typed);
    await page.keyboard.press("Enter");
  }
  if (await fieldOf(page, "Touch 2").isVisible()) await page.keyboard.press("Enter");
  const initials = page.getByRole("dialog").getByRole("textbox");
  await initials
    .or(form.getByRole("status").filter({ hasText: "Saved" }))
    .first()
    .waitFor();
  if (await initials.isVisible()) {
    await page.keyboard.type("qa");
    await page.keyboard.press("Enter");
  }
  await values.waitFor({ state: "detached" });
}

/** Every device works through its own as fast as the table answers. */
export async function flatOut(devices: readonly Device[], turns: readonly Turn[]): Promise<void> {
  await Promise.all(
    devices.map(async (device, index) => {
      for (const turn of turns) if (turn.device === index) await device.enter(turn);
    }),
  );
}

/** One entry after another at its time, whether the table has answered those before or not; a device has two hands. */
export async function paced(
  devices: readonly Device[],
  turns: readonly Turn[],
  everyMs: number,
): Promise<void> {
  const busy = devices.map(() => Promise.resolve());
  for (const turn of turns) {
    await wait(everyMs);
    busy[turn.device] = (busy[turn.device] ?? Promise.resolve()).then(() =>
      deviceOf(devices, turn).enter(turn),
    );
  }
  await Promise.all(busy);
}

/** Leaps at the table's own station, one every so many ms. */
export async function atTable({ page }: AtStation, bibs: readonly number[], everyMs: number): Promise<void> {
  for (const bib of bibs) {
    await enterAt(page, { bib, fields: leapOf(bib, "211") });
    await wait(everyMs);
  }
}

function deviceOf<Device>(devices: readonly Device[], { device }: Turn): Device {
  const found = devices[device];
  if (found === undefined) throw new Error(`There is no device ${device}.`);
  return found;
}
