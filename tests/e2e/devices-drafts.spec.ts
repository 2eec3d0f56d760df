import { type Browser, expect, type Page } from "@playwright/test";
import { openDevice } from "./browsers.ts";
import { joinAs, test } from "./devices.ts";
import { attemptsOf, bibWithoutPast, diskOf, readDoor, save, typeCore } from "./devices-kept.ts";
import { beginHere, choosePlace, openDemoTable } from "./joining.ts";
import { heatOf } from "./live.ts";
import { callDoor } from "./page.ts";
import type { Tapeline } from "./session.ts";

/** What is half typed on a phone when the organiser gives it another station, and when its disk is spoiled. */

const button = (page: Page, name: string | RegExp) => page.getByRole("button", { name });

async function openPhone({ desk }: Tapeline, chromium: Browser, place: string): Promise<Page> {
  const url = await openDemoTable({ desk });
  const { page } = await openDevice(chromium, 360, 640, { isMobile: true });
  await joinAs(desk, { page }, url, "Red phone", place);
  return page;
}

interface Found {
  readonly who: { readonly athleteId: number; readonly name: string };
}

/** Spoils what lies on a device's disk: nothing of it opens any more. */
function spoilRows(page: Page): Promise<void> {
  return page.evaluate(async () => {
    const wait = <Result>(request: IDBRequest<Result>) =>
      new Promise<Result>((resolve) => {
        request.onsuccess = () => resolve(request.result);
      });
    const db = await wait(indexedDB.open("tapeline-device"));
    const rows = db.transaction("rows", "readwrite").objectStore("rows");
    for (const key of await wait(rows.getAllKeys())) {
      const row = await wait(rows.get(key));
      await wait(rows.put({ ...row, sealed: new TextEncoder().encode("{no JSON").buffer }, key));
    }
    db.close();
  });
}

/** Gives the phone another place at the table, and waits until it says so. */
async function move({ desk }: Tapeline, page: Page, place: string): Promise<void> {
  await choosePlace(desk.getByRole("row", { name: /Red phone/ }).getByRole("combobox"), place);
  await expect(page.getByText(new RegExp(`^The organiser has given this device to .*${place}`))).toBeVisible({
    timeout: 30_000,
  });
}

test("what is half typed at a station stays sealed on the device while it is another one, which says so", async ({
  tapeline,
  chromium,
}) => {
  const page = await openPhone(tapeline, chromium, "Agility");
  await button(page, /^Enter from paper/).tap();
  const bib = page.getByRole("textbox", { name: "Bib", exact: true });
  await expect(bib).toBeFocused();
  const waiting = page.locator("section[aria-labelledby=queue] li").first();
  const next = (await waiting.textContent())?.match(/^\d+/)?.[0] ?? "";
  await bib.fill(next);
  await page.keyboard.press("Enter");
  await page.getByLabel("Full laps").fill("6");
  await move(tapeline, page, "Power");
  await expect(page.getByText(`Bib ${next} at “Agility: quadrant jump” is not saved yet`)).toBeVisible();
  expect(await diskOf(page)).toEqual({ rows: 1, readable: false, extractable: false });
  expect(await page.evaluate(() => Object.keys(sessionStorage).filter((key) => /draft/.test(key)))).toEqual(
    [],
  );
  await move(tapeline, page, "Agility");
  await expect(page.getByLabel("Full laps")).toHaveValue("6");
  await expect(bib).toHaveValue(next);
  // Saved, or taken back, it is nothing to keep.
  await page.getByLabel("Full laps").fill("");
  await expect.poll(async () => (await diskOf(page)).rows).toBe(0);
  await page.context().close();
});

test("a half-typed correction is open again, as it was, when the device is that station again", async ({
  tapeline,
  chromium,
}) => {
  const { desk } = tapeline;
  const page = await openPhone(tapeline, chromium, "Core");
  const bib = await bibWithoutPast(desk);
  await typeCore(page, bib, "1:03");
  await save(page);
  await button(page, /^Correct this result/).tap();
  const dialog = page.getByRole("dialog");
  await dialog.getByLabel("Time").fill("1:13");
  await dialog.getByLabel("Reason").fill("misread");
  await move(tapeline, page, "Power");
  await expect(
    page.getByText(`Your correction of bib ${bib} at “Core: staged plank” is not saved yet`),
  ).toBeVisible();
  await expect(dialog).toHaveCount(0);
  await move(tapeline, page, "Core");
  await expect(dialog.getByLabel("Time")).toHaveValue("1:13");
  await expect(dialog.getByLabel("Reason")).toHaveValue("misread");
  await dialog.getByRole("button", { name: /^Save the correction/ }).tap();
  await expect(page.getByText(`The correction is saved: bib ${bib}`)).toBeVisible();
  await expect.poll(() => attemptsOf(desk, bib)).toBe(2);
  // The result and its correction, and nothing half typed.
  await expect.poll(async () => (await diskOf(page)).rows).toBe(2);
  await page.reload();
  await expect(
    button(page, /^Run it here/)
      .or(page.getByText("Run it here"))
      .first(),
  ).toBeVisible();
  await expect(dialog).toHaveCount(0);
  await page.context().close();
});

test("a reading of a live leap that is not saved is on the pad again, and goes in by a key alone", async ({
  tapeline,
  chromium,
}) => {
  const page = await openPhone(tapeline, chromium, "Power");
  const field = page.getByRole("status", { name: /^(Standing reach|Height touched)/ });
  await button(page, /^Call the next/).tap();
  await page.getByRole("dialog").getByRole("textbox").fill("QA");
  await page.keyboard.press("Enter");
  await expect(field).toBeVisible();
  // A person looks before pressing what has only just come (`useStillness`).
  await page.waitForTimeout(800);
  for (const name of ["2", "1"]) await page.getByRole("button", { name, exact: true }).tap();
  await expect(field).toHaveAccessibleName(/: 21$/);
  await move(tapeline, page, "Core");
  await expect(
    page.getByText(/^The reading of bib \d+ at “Power: vertical leap” is not saved yet/),
  ).toBeVisible();
  await move(tapeline, page, "Power");
  await beginHere(page);
  await expect(field).toHaveAccessibleName(/: 21$/);
  expect((await heatOf(page, "vertical")).events.filter(({ kind }) => kind === "reach")).toEqual([]);
  await page.context().close();
});

test("a draft that no longer reads, and what is no JSON, stop no page; somebody who is deleted leaves none", async ({
  tapeline,
  chromium,
}) => {
  const { desk } = tapeline;
  const page = await openPhone(tapeline, chromium, "Core");
  const bib = await bibWithoutPast(desk);
  await typeCore(page, bib, "1:0");
  await expect.poll(async () => (await diskOf(page)).rows).toBe(1);
  await spoilRows(page);
  await page.evaluate(() => sessionStorage.setItem("station.draft.core", "{no JSON"));
  await page.reload();
  await expect(page.getByRole("textbox", { name: "Bib", exact: true })).toHaveValue("");
  await typeCore(page, bib, "1:0");
  const found = await readDoor(desk, "station.find", { test: "core", lengths: "cm", bib: String(bib) });
  const { athleteId, name } = (found as Found).who;
  await callDoor(desk, "people.erase", {
    ...{ erasureId: crypto.randomUUID(), athleteId, typed: name, by: "QA" },
  });
  // The spoiled row is nobody's any more; the draft of whoever was deleted goes at the next comparison.
  await expect.poll(async () => (await diskOf(page)).rows, { timeout: 90_000 }).toBe(1);
  await page.context().close();
});
