import { type Browser, expect, type Page } from "@playwright/test";
import { openDevice } from "./browsers.ts";
import { deviceSizes, type Look, lookInBoth } from "./device-screens.ts";
import { bibWithoutPast, save, typeCore } from "./devices-kept.ts";
import { beginHere, choosePlace, letIn, readCode } from "./joining.ts";
import { callDoor } from "./page.ts";

/** What a device shows beside its stations' own screens: how it waits, what was entered, a jump under way, how it leaves. */

const button = (page: Page, name: string | RegExp) => page.getByRole("button", { name });

/** A person looks before pressing what has only just come (`useStillness`), in ms. */
const stillMs = 900;

/**
 * Leads a phone through these states at the demo's table that `url` leads to, and away from it in the end. `look` sees each
 * in English, then in Spanish.
 */
export async function walkStates(desk: Page, browser: Browser, url: string, look: Look): Promise<void> {
  const [width, height] = deviceSizes[0];
  const { page, context } = await openDevice(browser, width, height, { isMobile: true });
  const both = (name: string) => lookInBoth(page, name, look);
  await page.goto(url);
  await page.getByLabel("Code").fill(await readCode(desk));
  await page.getByLabel("Name of this device").fill("Red phone");
  await button(page, "Ask to join").click();
  await page.getByText("Waiting for the organiser's yes.").waitFor();
  await both("waiting");
  await letIn(desk, "Red phone", "Core");
  await beginHere(page);
  await walkCorrection(desk, page, both);
  await walkLeap(desk, page, both);
  await walkJump(desk, page, both);
  await button(page, /^Leave or change/).click();
  await page.getByRole("alertdialog").waitFor();
  await both("leave");
  await button(page, "Stay here").click();
  await callDoor(desk, "network.turnOff", {});
  await page.getByText(/^Table away since/).waitFor({ timeout: 30_000 });
  await both("away");
  await context.close();
}

type Both = (name: string) => Promise<void>;

async function walkCorrection(desk: Page, page: Page, both: Both): Promise<void> {
  await typeCore(page, await bibWithoutPast(desk), "1:03");
  await save(page);
  await button(page, /^Correct this result/).waitFor();
  await both("saved");
  await page.getByRole("heading", { name: "Latest results" }).scrollIntoViewIfNeeded();
  await both("latest");
  await button(page, /^Correct this result/).click();
  const dialog = page.getByRole("dialog");
  await dialog.getByLabel("Time").waitFor();
  await both("correction");
  await dialog.getByRole("button", { name: /^It does not count/ }).click();
  await both("correction-reason");
  await dialog.getByLabel("Time").fill("1:13");
  await dialog.getByRole("button", { name: /^Close, change nothing/ }).click();
  await both("correction-left");
  await dialog.getByRole("button", { name: /^Drop it/ }).click();
  await expect(dialog).toHaveCount(0);
}

async function walkLeap(desk: Page, page: Page, both: Both): Promise<void> {
  await goTo(desk, page, "Power");
  const field = page.getByRole("status", { name: /^(Standing reach|Height touched)/ });
  await field.waitFor();
  await page.waitForTimeout(stillMs);
  await typeOnPad(page, "219");
  await expect(field).toHaveAccessibleName(/1 of 3:\s*$/);
  await typeOnPad(page, "26");
  await both("leap-typed");
  await typeOnPad(page, "4");
  await expect(field).toHaveAccessibleName(/2 of 3:\s*$/);
  await both("leap-one-saved");
  await typeOnPad(page, "300");
  await page.getByText(/is a very high jump/).waitFor();
  await both("leap-asked");
  await button(page, /^No, change it/).click();
}

/** The direction's half minute goes by as it does in a hall. */
async function walkJump(desk: Page, page: Page, both: Both): Promise<void> {
  await goTo(desk, page, "Agility");
  await button(page, /^Start the count-in/).waitFor();
  await both("jump-before");
  await button(page, /^Start the count-in/).click();
  await page.getByText("Seconds left").waitFor();
  await both("jump-running");
  await page.getByRole("heading", { name: /^Time!/ }).waitFor({ timeout: 60_000 });
  await page.waitForTimeout(stillMs);
  await both("jump-to-count");
}

/** Gives the phone another station, and calls whoever is next there. */
async function goTo(desk: Page, page: Page, place: string): Promise<void> {
  await choosePlace(desk.getByRole("row", { name: /Red phone/ }).getByRole("combobox"), place);
  await page.getByText(new RegExp(`^The organiser has given this device to .*${place}`)).waitFor();
  await beginHere(page);
  const live = page.getByText("Run it here", { exact: true }).filter({ visible: true });
  const call = button(page, /^Call the next/);
  await live.or(call).first().waitFor();
  if (!(await call.isVisible())) await live.click();
  await call.click();
}

async function typeOnPad(page: Page, text: string): Promise<void> {
  for (const sign of text) await page.getByRole("button", { name: sign, exact: true }).click();
}
