import { AxeBuilder } from "@axe-core/playwright";
import { expect, type Page } from "@playwright/test";

/** The rules of axe-core for the Web Content Accessibility Guidelines 2.2 (W3C), levels A and AA. */
const levels = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"];

/** Fails with what is wrong and where, in short; and where fewer than `least` rules had anything to look at. */
export async function expectForEverybody(page: Page, least = 6): Promise<void> {
  // What moves in may be half transparent for a moment.
  await page.evaluate(() => {
    for (const each of document.getAnimations()) {
      if (each.effect?.getComputedTiming().endTime !== Number.POSITIVE_INFINITY) each.finish();
    }
  });
  // In one go, since a window of the app can't open another page.
  const { violations, passes } = await new AxeBuilder({ page }).withTags(levels).setLegacyMode().analyze();
  const told = violations.map(({ id, help, nodes }) => ({ id, help, where: nodes.map(({ html }) => html) }));
  expect(told).toEqual([]);
  expect(passes.length).toBeGreaterThanOrEqual(least);
}
