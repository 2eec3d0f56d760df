import { expect, type Page } from "@playwright/test";
import { freePort } from "../network/table.ts";
import { openDevice, startChromium } from "./browsers.ts";
import { joinAs, test } from "./devices.ts";
import {
  attemptsOf,
  bibWithoutPast,
  bibWithPast,
  diskOf,
  readDoor,
  save,
  sayInitials,
  turnOnAgain,
  typeCore,
} from "./devices-kept.ts";
import { startFaultProxy } from "./fault-proxy.ts";
import { openDemoTable } from "./joining.ts";
import { callDoor } from "./page.ts";
import { entryOf } from "./stations.ts";

/** The table goes away and comes back: what a device keeps meanwhile, and what it may not keep. */

test("what is typed while the table is away waits sealed on the device, and is there once when it is back", async ({
  tapeline,
}) => {
  const { desk } = tapeline;
  const url = await openDemoTable(tapeline);
  const port = Number(new URL(url).port);
  const proxy = await startFaultProxy(await freePort(), port);
  // The device asks for the table's own address, and comes to what stands between.
  const browser = await startChromium([
    `--host-resolver-rules=MAP 127.0.0.1:${port} 127.0.0.1:${proxy.port}`,
  ]);
  const { page } = await openDevice(browser, 1024, 768);
  await joinAs(desk, { page }, url, "Blue tablet", "Core");
  const bib = await bibWithoutPast(desk);
  await typeCore(page, bib, "1:03");
  // The table takes it, and every answer is lost on the way: nobody knows whether it was accepted.
  proxy.set({ silent: "answers" });
  await save(page);
  await expect(page.getByText(/1 waits for the table/)).toBeVisible();
  await expect(page.getByText(/Table away since/)).toBeVisible();
  await expect(entryOf(page).getByText(/not saved there yet/)).toBeVisible();
  const disk = await diskOf(page);
  expect(disk).toEqual({ rows: 1, readable: false, extractable: false });

  // Back again, after the tab was closed: the device sends what it kept, under the same id.
  await page.goto("about:blank");
  proxy.set({ delayMs: 30 });
  proxy.cut();
  await page.goto(url);
  await expect(page.getByText(/sent entries saved/)).toBeVisible();
  // A copy stays until the day is closed, in case the table is lost.
  expect(await diskOf(page)).toEqual({ rows: 1, readable: false, extractable: false });
  expect(await attemptsOf(desk, bib)).toBe(1);

  // Sent away, nothing stays on it.
  await desk.getByRole("button", { name: "Send away: Blue tablet" }).click();
  await desk.getByRole("alertdialog").getByRole("button", { name: "Send away" }).click();
  await expect(page.getByRole("heading", { name: "Join the testing day" })).toBeVisible();
  expect(await page.evaluate(() => indexedDB.databases())).toEqual([]);
  await browser.close();
  await proxy.close();
});

test("what the table asks about an entry that waited is asked at the device, and a yes saves it once", async ({
  tapeline,
  chromium,
}) => {
  const { desk } = tapeline;
  const url = await openDemoTable(tapeline);
  const { page, context } = await openDevice(chromium, 1024, 768);
  await joinAs(desk, { page }, url, "Blue tablet", "Core");
  const bib = await bibWithPast(desk);
  await typeCore(page, bib, "0:04");
  await callDoor(desk, "network.turnOff", {});
  await save(page);
  // Whoever typed it has gone on to the next athlete.
  await expect(entryOf(page).getByText(/not saved there yet/)).toBeVisible();
  await turnOnAgain(desk, url);

  // The outbox answers no doubt by itself: nothing is at the table yet.
  await page.getByRole("button", { name: "1 not accepted…" }).click();
  const dialog = page.getByRole("dialog", { name: "What the table did not accept" });
  await expect(dialog.getByText(`Bib ${bib}, entered here: held 0:04`)).toBeVisible();
  expect(await attemptsOf(desk, bib)).toBe(0);
  await dialog.getByRole("button", { name: "It is right: send it again" }).click();
  await expect(page.getByText(/sent entries saved/)).toBeVisible();
  expect(await attemptsOf(desk, bib)).toBe(1);
  await context.close();
});

test("a device whose cookie ended keeps what waits, and sends it once it has joined again", async ({
  tapeline,
  chromium,
}) => {
  const { desk } = tapeline;
  const url = await openDemoTable(tapeline);
  const { page, context } = await openDevice(chromium, 360, 640);
  await joinAs(desk, { page }, url, "Red phone", "Core");
  const bib = await bibWithoutPast(desk);
  await typeCore(page, bib, "1:04");
  await callDoor(desk, "network.turnOff", {});
  await save(page);
  await expect(page.getByText(/1 waits for the table/)).toBeVisible();
  await context.clearCookies();
  await turnOnAgain(desk, url);
  await expect(
    page.getByRole("heading", { name: "1 entry on this device is not at the table" }),
  ).toBeVisible();
  await expect(page.getByText(`Bib ${bib}, entered here: held 1:04`)).toBeVisible();
  expect(await attemptsOf(desk, bib)).toBe(0);
  await joinAs(desk, { page }, url, "Red phone again", "Core");
  await expect(page.getByText(/sent entries saved/)).toBeVisible();
  expect(await attemptsOf(desk, bib)).toBe(1);
  await context.close();
});

test("a device deletes what it keeps when the day is closed, and what the table never had only by hand", async ({
  tapeline,
  chromium,
}) => {
  const { desk } = tapeline;
  const url = await openDemoTable(tapeline);
  const [saved, lost] = [await openDevice(chromium, 360, 640), await openDevice(chromium, 360, 640)];
  await joinAs(desk, saved, url, "Red phone", "Core");
  await joinAs(desk, lost, url, "Blue phone", "Core");
  const bib = await bibWithoutPast(desk);
  await typeCore(saved.page, bib, "1:05");
  await save(saved.page);
  await expect(saved.page.getByText(/sent entries saved/)).toBeVisible();
  await expect.poll(() => attemptsOf(desk, bib)).toBe(1);
  const other = await bibWithoutPast(desk);
  await typeCore(lost.page, other, "1:06");
  // Out of reach while the day is closed: it hears of it later, or never.
  await lost.context.setOffline(true);
  await save(lost.page);
  await expect(lost.page.getByText(/1 waits for the table/)).toBeVisible();

  await closeDay(desk);
  await expect(saved.page.getByRole("heading", { name: "Join the testing day" })).toBeVisible();
  expect(await saved.page.evaluate(() => indexedDB.databases())).toEqual([]);
  await lost.context.setOffline(false);
  await expect(
    lost.page.getByRole("heading", { name: "1 entry on this device is not at the table" }),
  ).toBeVisible();
  await lost.page.getByRole("button", { name: "Delete them from this device" }).click();
  await lost.page
    .getByRole("alertdialog")
    .getByRole("button", { name: "Delete them from this device" })
    .click();
  await expect.poll(() => lost.page.evaluate(() => indexedDB.databases())).toEqual([]);
  await saved.context.close();
  await lost.context.close();
});

test("check-in at a device says that it needs the table, and loses nothing of what is typed meanwhile", async ({
  tapeline,
  chromium,
}) => {
  const { desk } = tapeline;
  const url = await openDemoTable(tapeline);
  const { page, context } = await openDevice(chromium, 1024, 768);
  await joinAs(desk, { page }, url, "Blue tablet", "Check-in");
  await page.getByRole("heading", { name: "Check-in" }).waitFor();
  await page.keyboard.press("Alt+n");
  await page.getByRole("textbox", { name: "Derby name" }).fill("Heron Walk");
  await page.getByRole("combobox", { name: "League" }).fill("Marsh Wheelers");
  // While the list of leagues is open the rest of the page is hidden from who can't see it.
  await page.keyboard.press("Tab");
  await page.getByRole("textbox", { name: "Year of birth" }).fill("1994");
  await callDoor(desk, "network.turnOff", {});
  await expect(page.getByText(/Check-in needs the table: leave the form open/)).toBeVisible();
  await page.getByRole("button", { name: "No to all seven" }).click();
  await page
    .getByRole("radiogroup", { name: /big screen in the hall/ })
    .getByText("By name")
    .click();
  await page
    .getByRole("radiogroup", { name: /published without/ })
    .getByText("Yes")
    .click();
  await page.keyboard.press("Control+Enter");
  await sayInitials(page);
  await expect(page.getByText(/^No reply yet, so this may not be saved/)).toBeVisible();
  await expect(page.getByRole("textbox", { name: "Derby name" })).toHaveValue("Heron Walk");
  await expect(page.getByRole("radio", { name: "By name" })).toBeChecked();
  // Who somebody is lies on no device.
  expect((await diskOf(page)).rows).toBe(0);
  await turnOnAgain(desk, url);
  await expect(page.getByText(/The table is there/)).toBeVisible();
  await page.keyboard.press("Control+Enter");
  await expect(page.getByRole("heading", { name: "Heron Walk is checked in" })).toBeVisible();
  await context.close();
});

/** Closes the day at hand through the table's own door. */
async function closeDay(desk: Page): Promise<void> {
  const { day } = (await readDoor(desk, "day.current")) as { readonly day: { readonly id: number } };
  await callDoor(desk, "day.close", { dayId: day.id });
}
