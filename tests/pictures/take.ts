import { join } from "node:path";
import type { Page } from "@playwright/test";
import { projectFolder } from "../../electron/runtime/host.ts";

/** Where all pictures go, anew each time. */
export const allPictures = join(projectFolder, "out", "pictures");

/** The size of a window's page, in CSS px, and how many px of the screen each of them is; 1 if left out. */
export type Size = readonly [width: number, height: number, scale?: number];

export const desktop: Size = [1280, 800];

/** The screens of hall laptops, by what stands in the names of their pictures: the last one with everything a quarter larger. */
const screens = {
  1280: desktop,
  1366: [1366, 768],
  1024: [1024, 768],
  "1280-at-125": [1024, 640, 1.25],
} as const satisfies Readonly<Record<string, Size>>;

/** Gives a page the size that it has on such a screen. */
export async function resize(page: Page, [width, height, scale = 1]: Size): Promise<void> {
  const session = await page.context().newCDPSession(page);
  const screen = { width, height, deviceScaleFactor: scale, mobile: false };
  await session.send("Emulation.setDeviceMetricsOverride", screen);
}

export function picturePath(name: string): string {
  return join(allPictures, `${name}.png`);
}

/** Takes a picture of what stands still. */
export async function take(page: Page, name: string): Promise<void> {
  await page.mouse.move(0, 0);
  // Data comes, fonts come, and what moves has come to rest.
  await page.waitForFunction(() => document.querySelector('[aria-busy="true"]') === null);
  await page.evaluate(() => document.fonts.ready);
  await page.waitForTimeout(350);
  await page.screenshot({ path: picturePath(name), animations: "disabled", caret: "hide" });
  console.log(name);
}

/** The same of the page to its end, as in a window that is high enough for it. */
export async function takeWhole(page: Page, name: string): Promise<void> {
  let height = desktop[1];
  // What is longer in a higher window, as a table is, grows with it.
  for (let look = 0; look < 4; look += 1) {
    // The screen scrolls between head and foot.
    const more = await page.evaluate(() => {
      const room = document.querySelector("main")?.parentElement;
      return room == null ? 0 : room.scrollHeight - room.clientHeight;
    });
    if (more <= 0) break;
    height += more;
    await resize(page, [desktop[0], height]);
  }
  await take(page, name);
  await resize(page, desktop);
}

/** The same on each screen; the usual one has the name alone. */
export async function takeOnScreens(page: Page, name: string): Promise<void> {
  for (const [screen, size] of Object.entries(screens)) {
    await resize(page, size);
    await take(page, size === desktop ? name : `${name}-${screen}`);
  }
  await resize(page, desktop);
}

/** The same at another size, and back to the desk's usual one. */
export async function takeAt(page: Page, size: Size, name: string): Promise<void> {
  await resize(page, size);
  await take(page, name);
  await resize(page, desktop);
}

/** Goes to a place of the desk and waits until it stands there. */
export async function go(desk: Page, path: string): Promise<void> {
  await desk.evaluate((hash) => {
    location.hash = hash;
  }, path);
  await desk.locator("main h1").filter({ visible: true }).first().waitFor();
}

/** Answers the one question for initials, where it is asked. */
export async function sayInitials(desk: Page): Promise<void> {
  const initials = desk.getByRole("dialog").getByRole("textbox", { name: "Your initials" });
  await initials.fill("QA");
  await initials.press("Enter");
}
