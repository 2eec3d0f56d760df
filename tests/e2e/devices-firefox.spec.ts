import { expect } from "@playwright/test";
import type { Page as FirefoxPage } from "puppeteer-core";
import { joinFirefoxAs, test } from "./devices.ts";
import { openFirefoxDevice } from "./firefox.ts";
import { openDemoTable } from "./joining.ts";
import { callDoor } from "./page.ts";
import { attemptsAt } from "./paper.ts";

/** A device with another engine than the program's own: Debian's Firefox. */

const textOf = (page: FirefoxPage, selector: string) =>
  page.$eval(selector, (element) => element.textContent ?? "").catch(() => "");

test("Firefox joins, keys a result at its station, sees the queue move, and is still who it was when reloaded", async ({
  tapeline,
  firefox,
}) => {
  const { desk } = tapeline;
  test.info().annotations.push({ type: "browser", description: await firefox.version() });
  const url = await openDemoTable(tapeline);
  const phone = await openFirefoxDevice(firefox, 360, 640);
  const { page } = phone;
  await test.step("joins", async () => {
    await joinFirefoxAs(desk, phone, url, "Fox phone", "Core");
    await expect.poll(() => textOf(page, "h1")).toContain("Staged plank");
    await expect(desk.getByRole("row", { name: /Fox phone/ })).toContainText("Connected");
  });
  await test.step("holds a token that no script reads and no other site gets", async () => {
    const [cookie, ...others] = await page.cookies();
    expect(others).toEqual([]);
    expect(cookie).toMatchObject({ secure: true, httpOnly: true, sameSite: "Strict", path: "/" });
    expect(cookie?.name).toMatch(/^__Host-/);
    expect(await page.evaluate(() => document.cookie)).toBe("");
  });
  await test.step("keys a result, and its queue moves", async () => {
    await page.locator("button::-p-text(Enter from paper)").click();
    const first = "section[aria-labelledby=queue] li:first-child";
    const bib = Number(await textOf(page, `${first} button > span:first-child`));
    expect(bib).toBeGreaterThan(0);
    await page.locator(`${first} button`).click();
    await isAt(page, /^Time/);
    await page.keyboard.type("2:31");
    await page.keyboard.press("Enter");
    await isAt(page, /^Your initials/);
    await page.keyboard.type("FX");
    await page.keyboard.press("Enter");
    await expect.poll(() => textOf(page, "section[aria-label='Enter a result']")).toContain("Saved");
    await expect.poll(() => textOf(page, first)).not.toContain(`${bib}`);
    const [newest] = await attemptsAt(desk, "core");
    expect(newest).toMatchObject({ bib, stands: true });
  });
  await test.step("hears at once what the table does", async () => {
    await callDoor(desk, "board.hide", { hidden: true });
    await page.waitForSelector("button::-p-text(Show the big screen)");
  });
  await test.step("comes back when it is reloaded", async () => {
    await page.reload();
    await expect.poll(() => textOf(page, "h1")).toContain("Staged plank");
    await expect.poll(() => textOf(page, "body")).toContain("Core only");
  });
  expect(phone.complaints).toEqual([]);
  await phone.close();
});

/** Waits until the field that has the focus is the one with that label. */
async function isAt(page: FirefoxPage, label: RegExp): Promise<void> {
  const labelled = () =>
    page.evaluate(() => {
      const field = document.activeElement;
      return field instanceof HTMLInputElement ? (field.labels?.[0]?.textContent ?? "") : "";
    });
  await expect.poll(labelled).toMatch(label);
}
