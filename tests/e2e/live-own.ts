import { expect, type Page } from "@playwright/test";
import type { TestCode } from "../../electron/domain/tests/registry.ts";
import { type Eyes, heatOf, type Keys } from "./live.ts";

/** Calls the next into the lanes of a test whose lanes go at their own pace, which begin at once. */
export async function callIn(desk: Page, keys: Keys, test: TestCode, bibs: readonly number[]): Promise<void> {
  await expect(desk.getByRole("button", { name: /^Call the next/ })).toBeVisible();
  await keys.press("n");
  const initials = desk.getByRole("dialog").getByRole("textbox");
  const stage = desk.locator(`[data-pace="own"][data-test="${test}"]`);
  await expect(initials.or(stage).first()).toBeVisible();
  if (await initials.isVisible()) {
    await initials.fill("QA");
    await initials.press("Enter");
  }
  await expect
    .poll(async () => (await heatOf(desk, test).catch(() => null))?.lane.map(({ who }) => who.bib))
    .toEqual(bibs);
  await expect(stage).toContainText(`Skater ${bibs[0]}`);
}

/** As fast as a good typist: a scanner sends its digits faster than this. */
const betweenKeysMs = 70;

/**
 * Presses one key after the other at a person's pace.
 * @param rest lets so many ms pass: of the clock that is held, or of one that runs
 */
export async function typeKeys(
  rest: (ms: number) => Promise<void>,
  keys: Keys,
  ...pressed: readonly string[]
): Promise<void> {
  for (const key of pressed) {
    await keys.press(key);
    await rest(betweenKeysMs);
  }
}

/** A scanner's digits and Enter, one right after the other however busy the machine is. */
export async function scan(eyes: Eyes, bib: string): Promise<void> {
  await eyes.evaluate(`(${pressAll})(${JSON.stringify([...bib, "Enter"])})`);
}

/** Runs in the page, and sees nothing around it here. */
function pressAll(keys: readonly string[]): void {
  for (const key of keys) {
    const code = key === "Enter" ? "Enter" : `Digit${key}`;
    const press = new KeyboardEvent("keydown", { key, code, bubbles: true, cancelable: true });
    (document.activeElement ?? document.body).dispatchEvent(press);
  }
}
