import { type Browser, expect, type Page } from "@playwright/test";
import { openDevice } from "./browsers.ts";
import { joinAs, test } from "./devices.ts";
import { openDemoTable } from "./joining.ts";
import type { Tapeline } from "./session.ts";

/** The check-in table on a tablet, with fingers alone. */

const button = (page: Page, name: string | RegExp) => page.getByRole("button", { name });

async function openCheckIn(tapeline: Tapeline, chromium: Browser): Promise<Page> {
  const url = await openDemoTable(tapeline);
  const device = await openDevice(chromium, 768, 1024, { isMobile: true });
  await joinAs(tapeline.desk, device, url, "Blue tablet", "Check-in");
  await expect(device.page.getByRole("combobox", { name: "Who is it?" })).toBeVisible();
  return device.page;
}

const hide = /Hide the big screen$/;

test("a device asks before it hides the hall's big screen", async ({ tapeline, chromium }) => {
  const page = await openCheckIn(tapeline, chromium);
  await button(page, hide).tap();
  const dialog = page.getByRole("alertdialog");
  await expect(dialog.getByRole("heading")).toHaveText("Hide the big screen for the whole hall?");
  await button(page, "Leave it on").tap();
  await expect(button(page, hide)).toBeVisible();
  await button(page, hide).tap();
  await dialog.getByRole("button", { name: hide }).tap();
  await expect(button(page, /Show the big screen$/)).toBeVisible();
  await expect(button(tapeline.desk, /Show the big screen$/)).toBeVisible();
  // Where a message is closed, nothing of the foot lies under a late tap.
  const right = await page.getByRole("group", { name: "Language" }).boundingBox();
  expect((right?.x ?? 768) + (right?.width ?? 0)).toBeLessThan(600);
});
