import { expect, type Page } from "@playwright/test";
import { testCodes } from "../../electron/domain/tests/registry.ts";
import { seenOnBoard, watchBoard } from "./hall.ts";
import type { Eyes } from "./live.ts";
import { goTo } from "./page.ts";

/** What big screens show, the table's own and those of the network alike. */

/**
 * A best that is on the list whatever its length: agility of bib 1, 4 × 7 + 3 − 0.5 × 3 = 29.5 one way and
 * 4 × 8 + 1 − 0.5 × 2 = 32 the other; the mean is 30.75, and 29.25 was the best before.
 */
const best = /Ödla Snabb(?:30\.75)?\+1\.5/;

export async function watchAll(screens: readonly Eyes[]): Promise<void> {
  for (const screen of screens) {
    await isBoard(screen);
    await watchBoard(screen);
  }
}

/** A device that was just let in is on its way from the page to join, and what is asked of that page then is lost. */
async function isBoard(screen: Eyes): Promise<void> {
  const ready = `document.querySelector('html[data-theme="hall"][data-ready="true"]') !== null`;
  await expect.poll(() => screen.evaluate(ready).catch(() => false)).toBe(true);
}

/** Each screen shows that a bib is called. */
export async function showCall(screens: readonly Eyes[], bib: number): Promise<void> {
  const bibs = `[...document.querySelectorAll('section[aria-label="Called now"] li li')].map((each) => each.textContent)`;
  for (const screen of screens) await expect.poll(() => screen.evaluate(bibs)).toContain(String(bib));
}

/** Each screen has shown the best, large or among the gains. */
export async function haveShownBest(screens: readonly Eyes[]): Promise<void> {
  for (const screen of screens) await expect.poll(() => seenOnBoard(screen)).toMatch(best);
}

/** Closes the day as the organiser does. */
export async function closeDay(desk: Page): Promise<void> {
  await goTo(desk, "Overview");
  await desk.getByRole("button", { name: "Close the day" }).click();
  const question = desk.getByRole("alertdialog");
  await question.getByRole("button", { name: "Close the day" }).click();
  await expect(question).toBeHidden();
}

/** Each screen thanks everybody, and says how much was done. */
export async function thankEverybody(screens: readonly Eyes[], athletes: number): Promise<void> {
  const text = 'document.querySelector("main")?.textContent ?? ""';
  const told = ["That was the day. Thank you, everybody!", `${athletes} athletes tested`];
  for (const screen of screens) {
    for (const each of [...told, `${athletes * testCodes.length} tests done`]) {
      await expect.poll(() => screen.evaluate(text)).toContain(each);
    }
  }
}
