import { type Browser, expect, type Page } from "@playwright/test";
import { type TestCode, testCodes } from "../../electron/domain/tests/registry.ts";
import { type Device, openDevice } from "./browsers.ts";
import { beginHere, letIn, readCode } from "./joining.ts";
import { heatOf } from "./live.ts";
import { callDoor } from "./page.ts";

/** Phones upright, tablets upright and across: the sizes that a station's screens are made for, in CSS px. */
export const deviceSizes = [
  [360, 640],
  [768, 1024],
  [1024, 768],
] as const;

/** What is done with each screen of a device, in each language. */
export type Look = (page: Page, name: string) => Promise<void>;

/** How long ago a test began for all at once, in ms: a moment at which most of it is shown. */
const startedAgoMs: Readonly<Partial<Record<TestCode, number>>> = {
  "push-up": 9_000,
  core: 57_000,
  endurance: 65_000,
};

/**
 * Leads a phone from joining through the check-in table and all five stations, live and from paper, at the demo's table
 * that `url` leads to. `look` sees each screen in English, then in Spanish.
 */
export async function walkDevice(desk: Page, browser: Browser, url: string, look: Look): Promise<void> {
  const [width, height] = deviceSizes[0];
  const device = await openDevice(browser, width, height, { isMobile: true });
  const { page } = device;
  const both = (name: string) => lookInBoth(page, name, look);
  await page.goto(url);
  await page.getByRole("heading", { level: 1 }).waitFor();
  await both("join");
  await joinAs(desk, device, "Red phone");
  await page.getByRole("button", { name: "Begin here" }).waitFor();
  await both("arrived");
  await beginHere(page);
  await page.getByRole("combobox", { name: "Who is it?" }).waitFor();
  await both("check-in");
  await page.getByRole("combobox", { name: "Who is it?" }).fill("e");
  await page.getByRole("option").first().waitFor();
  await both("check-in-search");
  await page.getByRole("option").first().click();
  await page.getByRole("heading", { level: 2 }).first().waitFor();
  await both("check-in-somebody");
  for (const test of testCodes) await walkStation(desk, page, url, test, both);
  await device.context.close();
}

/** Looks at a screen in English, then in Spanish, and leaves it in English. */
export async function lookInBoth(page: Page, name: string, look: Look): Promise<void> {
  await look(page, `${name}-en`);
  await speakOther(page, "es");
  await look(page, `${name}-es`);
  await speakOther(page, "en");
}

async function joinAs(desk: Page, { page }: Device, name: string): Promise<void> {
  await page.getByLabel("Code").fill(await readCode(desk));
  await page.getByLabel("Name of this device").fill(name);
  await page.getByRole("button", { name: "Ask to join" }).click();
  await letIn(desk, name, "Check-in");
}

async function walkStation(
  desk: Page,
  page: Page,
  url: string,
  test: TestCode,
  both: (name: string) => Promise<void>,
): Promise<void> {
  await giveStation(desk, page, url, test);
  if (test === "core") await both("core-arrived");
  await beginHere(page);
  await both(`${test}-next`);
  await page.getByRole("button", { name: /^Call the next/ }).click();
  await sayInitials(page);
  await page
    .getByRole("button", { name: /^(?:Start \d|End this heat)/ })
    .first()
    .waitFor();
  await both(`${test}-called`);
  const began = startedAgoMs[test];
  if (began !== undefined) {
    const { heatId } = await heatOf(page, test);
    await callDoor(page, "heat.start", { heatId, startedAgoMs: began });
    await page.getByRole("button", { name: /^End this heat/ }).waitFor();
    await both(`${test}-running`);
  }
  await page.getByRole("button", { name: /^Enter from paper/ }).click();
  await page.getByRole("textbox", { name: "Bib", exact: true }).waitFor();
  await both(`${test}-paper`);
  await page.locator("section[aria-labelledby=queue] li button").first().click();
  await page.getByRole("button", { name: /^Save the result/ }).waitFor();
  await both(`${test}-paper-somebody`);
}

async function giveStation(desk: Page, page: Page, url: string, test: TestCode): Promise<void> {
  const input = await desk.evaluate(() => fetch("/trpc/network.view").then((answer) => answer.json()));
  const deviceId = input.result.data.devices[0].id;
  // Away first: a page that hears of its new place reads itself again, which ends whatever leads it elsewhere at that moment.
  await page.goto("about:blank");
  await callDoor(desk, "network.place", { deviceId, place: { role: "station", test } });
  await page.goto(url);
  const live = page.getByText("Run it here", { exact: true }).filter({ visible: true });
  const paper = page.getByRole("button", { name: /^Enter from paper/ });
  await live.or(paper).first().waitFor();
  // What was chosen at the last station holds here too.
  if (await live.isVisible()) await live.click();
  await paper.waitFor();
}

async function sayInitials(page: Page): Promise<void> {
  const initials = page.getByRole("dialog").getByRole("textbox", { name: "Your initials" });
  const next = page.getByRole("button", { name: /^(?:Start \d|End this heat)/ }).first();
  await expect(initials.or(next)).toBeVisible();
  if (!(await initials.isVisible())) return;
  await initials.fill("QA");
  await initials.press("Enter");
}

/** Presses a language, wherever it stands; nothing where it is spoken already. */
export async function speakOther(page: Page, language: string): Promise<void> {
  await page.evaluate((lang) => {
    document.querySelector<HTMLElement>(`fieldset button[lang="${lang}"]`)?.click();
  }, language);
  await expect(page.locator("html")).toHaveAttribute("lang", language);
}
