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

async function openSomebody(page: Page, typed: string): Promise<void> {
  await page.getByRole("combobox", { name: "Who is it?" }).fill(typed);
  await page.getByRole("option").first().tap();
  await expect(page.locator("form, [data-start]").first()).toBeVisible();
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

test("no answer moves another under the finger at check-in", async ({ tapeline, chromium }) => {
  const page = await openCheckIn(tapeline, chromium);
  // With nothing typed the list is of those who are expected.
  await openSomebody(page, "");
  const places = () =>
    page
      .locator("form [data-part]:not([data-part=go]) label, form [data-part=go] button")
      .evaluateAll((all) =>
        all.map((each) => {
          const { left, top } = each.getBoundingClientRect();
          return `${Math.round(left)} ${Math.round(top)}`;
        }),
      );
  await expect(button(page, "No to all seven")).toBeVisible();
  const before = await places();
  await button(page, "No to all seven").tap();
  await expect(page.getByText("No to all seven questions.")).toBeVisible();
  expect(await places()).toEqual(before);
  await page.locator("form [data-part=go] button").tap();
  await expect(page.locator("form [data-part=go]")).toContainText(/answers? (?:is|are) missing/);
  expect(await places()).toEqual(before);
});

test("skipping one test of somebody checked in asks nothing about health, and says what holds now", async ({
  tapeline,
  chromium,
}) => {
  const page = await openCheckIn(tapeline, chromium);
  await openSomebody(page, "34");
  await button(page, "Change the answers").tap();
  await expect(page.getByText("The health questions were asked at check-in.")).toBeVisible();
  await expect(page.getByText(/Heart trouble/)).toHaveCount(0);
  await page.getByText("Skip some", { exact: true }).tap();
  await page.getByRole("group", { name: "Tick the tests to skip" }).getByText("Core").tap();
  await button(page, /^Save changes/).tap();
  const initials = page.getByRole("dialog");
  await expect(initials.getByRole("heading")).toHaveText("Who is at this device?");
  await initials.getByRole("textbox").fill("QA");
  await button(page, "Go on").tap();
  const saved = page.getByRole("heading", { name: /the changes are saved$/ });
  await expect(saved).toBeInViewport({ ratio: 1 });
  await expect(page.getByText("Skips")).toBeVisible();
  await expect(page.getByText("Hand over bib")).toHaveCount(0);
  // An undo here would take the whole check-in away.
  await expect(button(page, /^Undo/)).toHaveCount(0);
  await button(page, "Look at it again").tap();
  await button(page, "Change the answers").tap();
  const asked = page.getByText("The health questions were asked at check-in.");
  await expect(asked).toBeVisible();
  const all = page.getByText("All five", { exact: true });
  const at = await all.boundingBox();
  await all.tap();
  await expect(page.getByText("Was it skipped for health? Then ask again first.")).toBeVisible();
  await expect(asked).toBeHidden();
  expect(await all.boundingBox()).toEqual(at);
  await button(page, "Ask again").tap();
  await expect(page.getByText(/Heart trouble/).first()).toBeVisible();
  await button(page, /^Save changes/).tap();
  await expect(page.locator("form [data-part=go]")).toContainText("7 answers are missing.");
});
