import { type Browser, expect, type Page } from "@playwright/test";
import { openDevice } from "./browsers.ts";
import { test } from "./devices.ts";
import { beginHere, choosePlace, letIn, openDemoTable, readCode } from "./joining.ts";
import type { Tapeline } from "./session.ts";

/** What a device says once it is let in, and how whoever holds it gets somewhere else. */

const button = (page: Page, name: string | RegExp) => page.getByRole("button", { name });

/** A phone that was let in as a station, and has done nothing yet. */
async function arrive({ desk }: Tapeline, chromium: Browser, place: string): Promise<Page> {
  const url = await openDemoTable({ desk });
  const { page } = await openDevice(chromium, 360, 640, { isMobile: true });
  const code = await readCode(desk);
  await page.goto(url);
  await page.getByLabel("Code").fill(code);
  await page.getByLabel("Name of this device").fill("Red phone");
  await button(page, "Ask to join").tap();
  await desk.getByLabel("Use Red phone for").waitFor();
  const offered = await desk.getByLabel("Use Red phone for").getByRole("option").allTextContents();
  expect(offered.slice(1)).toEqual([
    ...["Check-in", "Strength: cadence push-up", "Agility: quadrant jump", "Power: vertical leap"],
    ...["Core: staged plank", "Endurance: circuit", "Big screen"],
  ]);
  await letIn(desk, "Red phone", place);
  return page;
}

const isNow = /^This device is now /;

test("a device that was let in says what it is now and what comes next, also after another place, and once", async ({
  tapeline,
  chromium,
}) => {
  const { desk } = tapeline;
  const page = await arrive(tapeline, chromium, "Core");
  await expect(page.getByText(isNow)).toHaveText("This device is now the station “Core: staged plank”.");
  await expect(page.getByText("Next: press “Call the next”, wait until")).toBeVisible();
  await beginHere(page);
  await expect(page.getByText(isNow)).toHaveCount(0);
  await page.reload();
  await expect(button(page, /^Call the next/)).toBeVisible();
  await expect(page.getByText(isNow)).toHaveCount(0);
  await choosePlace(desk.getByRole("row", { name: /Red phone/ }).getByRole("combobox"), "Check-in");
  await expect(
    page.getByText("The organiser has given this device to the check-in table.", { exact: true }),
  ).toBeVisible();
  await page.context().close();
});

test("whoever calls the next without reading on has begun", async ({ tapeline, chromium }) => {
  const page = await arrive(tapeline, chromium, "Agility");
  await expect(page.getByText("Next: press “Call the next”. From there the screen says")).toBeVisible();
  await button(page, /^Call the next/).tap();
  await page.getByRole("dialog").getByRole("textbox").fill("QA");
  await page.keyboard.press("Enter");
  await expect(page.getByText(isNow)).toHaveCount(0);
  await page.context().close();
});

/** A finger on what came under it less than 0.4 s ago was meant for what was there before, and is not heeded. */
const stillMs = 600;

test("a phone at a station shows how to do something else with it, and leaves the table", async ({
  tapeline,
  chromium,
}) => {
  const { desk } = tapeline;
  const page = await arrive(tapeline, chromium, "Core");
  await beginHere(page);
  await button(page, "Leave or change…").tap();
  const dialog = page.getByRole("alertdialog");
  await expect(dialog).toContainText("This device is used for: Core: staged plank.");
  await expect(dialog).toContainText("beside “Red phone”");
  await page.waitForTimeout(stillMs);
  await button(page, "Stay here").tap();
  await expect(dialog).toBeHidden();
  await expect(button(page, /^Call the next/)).toBeVisible();
  await button(page, "Leave or change…").tap();
  await expect(dialog).toBeVisible();
  await page.waitForTimeout(stillMs);
  await dialog.getByRole("button", { name: "Leave the table" }).tap();
  await expect(page.getByRole("heading", { name: "Join the testing day" })).toBeVisible();
  await expect(desk.getByText("No device has joined yet.")).toBeVisible();
  // Nothing of the day is kept here.
  expect(await page.evaluate(() => indexedDB.databases().then((all) => all.length))).toBe(0);
  await page.context().close();
});

test("a code that is scanned is whole in its field, also where the page is open already, and the wait names the device", async ({
  tapeline,
  chromium,
}) => {
  const { desk } = tapeline;
  const url = await openDemoTable(tapeline);
  const { page } = await openDevice(chromium, 360, 640, { isMobile: true });
  await page.goto(url);
  const field = page.getByLabel("Code");
  await expect(field).toHaveValue("");
  const code = await readCode(desk);
  await page.evaluate(
    (scanned) => {
      location.hash = scanned;
    },
    code.replace(" ", ""),
  );
  await expect(field).toHaveValue(code);
  expect(await field.evaluate((input) => input.scrollWidth - input.clientWidth)).toBeLessThan(1);
  // As wide as a code gets.
  await field.fill("WWMM WWMM");
  expect(await field.evaluate((input) => input.scrollWidth - input.clientWidth)).toBeLessThan(1);
  await field.fill(code);
  await page.getByLabel("Name of this device").fill("Red phone");
  await button(page, "Ask to join").tap();
  await expect(page.getByText("Tell the organiser that “Red phone” asks")).toBeVisible();
  await page.context().close();
});
