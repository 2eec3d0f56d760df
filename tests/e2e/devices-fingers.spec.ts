import { type Browser, expect, type Page } from "@playwright/test";
import { openDevice } from "./browsers.ts";
import { joinAs, test } from "./devices.ts";
import { notInSight } from "./in-sight.ts";
import { openDemoTable } from "./joining.ts";
import { isInSight } from "./paper.ts";
import type { Tapeline } from "./session.ts";

/** A station's entry from paper on a phone, with fingers alone. */

const bibField = (page: Page) => page.getByRole("textbox", { name: "Bib", exact: true });
const button = (page: Page, name: string | RegExp) => page.getByRole("button", { name });

/** The bib of whoever waits longest. */
const nextBib = async (page: Page) =>
  (await page.locator("section[aria-labelledby=queue] li").first().textContent())?.match(/^\d+/)?.[0] ?? "";

/** A phone at the demo's station of the vertical leap, its entry from paper in front. */
async function openPaper(tapeline: Tapeline, chromium: Browser): Promise<Page> {
  const url = await openDemoTable(tapeline);
  const device = await openDevice(chromium, 360, 640, { isMobile: true });
  await joinAs(tapeline.desk, device, url, "Red phone", "Power");
  await button(device.page, /^Enter from paper/).tap();
  await expect(bibField(device.page)).toBeFocused();
  return device.page;
}

async function takeUp(page: Page): Promise<string> {
  const bib = await nextBib(page);
  await bibField(page).fill(bib);
  await page.keyboard.press("Enter");
  await expect(page.getByLabel("Standing reach")).toBeFocused();
  return bib;
}

test("paper entry on a phone asks nothing of a bare Enter, and has the name beside a question", async ({
  tapeline,
  chromium,
}) => {
  const page = await openPaper(tapeline, chromium);
  // One Enter too many asks for nothing.
  await page.keyboard.press("Enter");
  await takeUp(page);
  await expect(page.getByText(/^Type the number/)).toHaveCount(0);
  const name = await page.locator("section[aria-label='Enter a result'] p").first().textContent();
  await page.getByLabel("Standing reach").fill("220");
  await page.getByLabel("Touch 1").fill("320");
  await button(page, /^Save the result/).tap();
  await page.getByRole("dialog").getByRole("textbox").fill("QA");
  await page.keyboard.press("Enter");
  await isInSight(page.getByRole("alert").getByText(name ?? ""));
  await isInSight(button(page, /^Yes, save it/));
});

test("a phone at the leap's paper has the name, every field and the save in one sight, and nothing lies over them", async ({
  tapeline,
  chromium,
}) => {
  const page = await openPaper(tapeline, chromium);
  await takeUp(page);
  const entry = "section[aria-label='Enter a result']";
  const wanted = `${entry} p:first-child, ${entry} :is(input[inputmode], button)`;
  expect(await page.locator(`${entry} input[inputmode]`).count()).toBeGreaterThan(4);
  expect(await notInSight(page, wanted)).toEqual([]);
  // With a sentence about a wrong reading the save is still there.
  await page.getByLabel("Touch 1").fill("22");
  await button(page, /^Save the result/).tap();
  await expect(page.locator(`${entry} [slot=errorMessage]`).first()).toBeVisible();
  expect(await notInSight(page, `${entry} button`)).toEqual([]);
});

test("the second direction of a quadrant jump says on a phone that the first is entered, and what the result is", async ({
  tapeline,
  chromium,
}) => {
  const url = await openDemoTable(tapeline);
  const { page } = await openDevice(chromium, 360, 640, { isMobile: true });
  await joinAs(tapeline.desk, { page }, url, "Red phone", "Agility");
  await button(page, /^Enter from paper/).tap();
  // Of whoever waits longest in the demo the clockwise trial is entered.
  await bibField(page).fill(await nextBib(page));
  await page.keyboard.press("Enter");
  await expect(page.getByRole("radio", { name: "Counter-clockwise" })).toBeChecked();
  await isInSight(
    page.getByText("Clockwise is entered, counter-clockwise comes now: the result is the mean of both."),
  );
});

test("who is next stands before the latest results on a phone", async ({ tapeline, chromium }) => {
  const page = await openPaper(tapeline, chromium);
  const top = (name: string) =>
    page
      .getByRole("heading", { name })
      .evaluate((heading) => Math.round(heading.getBoundingClientRect().top));
  expect(await top("Waiting here")).toBeLessThan(await top("Latest results"));
});

test("a phone has one line for each of the latest results, whose it is, what it is, and the key that corrects it", async ({
  tapeline,
  chromium,
}) => {
  const page = await openPaper(tapeline, chromium);
  const list = page.locator("section", { has: page.getByRole("heading", { name: "Latest results" }) });
  await expect(list.getByRole("listitem").first()).toBeVisible();
  const texts = await list.getByRole("listitem").allInnerTexts();
  const lines = await list.getByRole("listitem").evaluateAll((all) =>
    all.map((line) => ({
      height: Math.round(line.getBoundingClientRect().height),
      keys: [...line.querySelectorAll("button")].filter((key) => key.checkVisibility()).length,
      cut: line.scrollWidth - line.clientWidth,
    })),
  );
  expect(lines.length).toBeGreaterThan(10);
  for (const [index, line] of lines.entries()) {
    const text = texts[index]?.replaceAll(/\s+/g, " ").trim() ?? "";
    expect.soft(line.height, text).toBeLessThan(54);
    expect.soft([line.keys, line.cut], text).toEqual([1, 0]);
    expect.soft(text).toMatch(/^\d+ \S.* \d+(?:\.\d)? Correct it$/);
  }
  // What the line has no room for stands where it is corrected.
  await list.getByRole("button").first().tap();
  await expect(page.getByRole("dialog").getByText(/^Entered by \S+ at /)).toBeVisible();
});

test("a correction on a phone leads to its missing reason, and no button moves under the finger", async ({
  tapeline,
  chromium,
}) => {
  const page = await openPaper(tapeline, chromium);
  await button(page, /^Correct it/)
    .first()
    .tap();
  const dialog = page.getByRole("dialog");
  const reason = dialog.getByRole("textbox", { name: "Reason" });
  const places = () =>
    dialog
      .getByRole("button")
      .evaluateAll((all) => all.map((each) => Math.round(each.getBoundingClientRect().top)));
  await expect(dialog.getByRole("textbox", { name: "Touch", exact: true })).toBeVisible();
  // Units and values are whole.
  const cut = await dialog.locator("span:has(> input)").evaluateAll(
    (boxes) =>
      boxes.filter((box) => {
        const edge = box.closest("[role=dialog]")?.getBoundingClientRect().right ?? 0;
        return (box.lastElementChild?.getBoundingClientRect().right ?? 0) > edge - 8;
      }).length,
  );
  expect(cut).toBe(0);
  // What has to be filled in is seen at once, though the leap has three values.
  await isInSight(reason);
  const before = await places();
  await dialog.getByRole("button", { name: /^It does not count/ }).tap();
  await expect(reason).toBeFocused();
  await isInSight(reason);
  await isInSight(dialog.getByText("Give the reason first, in a few words."));
  expect(await places()).toEqual(before);
  expect((await reason.boundingBox())?.width).toBeGreaterThan(240);
  await page.setViewportSize({ width: 768, height: 1024 });
  await dialog.getByRole("button", { name: /^Close, change nothing/ }).tap();
  await button(page, /^Correct it/)
    .first()
    .tap();
  await expect(reason).toBeVisible();
  const atTablet = await places();
  await dialog.getByRole("button", { name: /^Save the correction/ }).tap();
  await expect(dialog.getByText("Give the reason first, in a few words.")).toBeVisible();
  // Each stays under the finger that pressed it, within a quarter of its height.
  const moved = (await places()).map((top, index) => Math.abs(top - (atTablet[index] ?? 0)));
  expect(Math.max(...moved)).toBeLessThan(11);
});
