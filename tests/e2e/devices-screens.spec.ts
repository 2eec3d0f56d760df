import { expect, type Page } from "@playwright/test";
import { expectForEverybody } from "./axe.ts";
import { deviceSizes, type Look, walkDevice } from "./device-screens.ts";
import { test } from "./devices.ts";
import { openDemoTable } from "./joining.ts";

/** Every screen of a device, at the sizes of phones and tablets, in both languages. */

/** WCAG 2.2 asks for 24 CSS px (2.5.8, AA) and 44 (2.5.5, AAA); the issue of these screens for the latter. */
const leastPx = 44;

/**
 * What is pressed and smaller than a finger needs, with its size, and how much was looked at. A control that nobody sees is
 * pressed by its label.
 */
function measurePressed(page: Page): Promise<{ small: string[]; looked: number }> {
  return page.evaluate((least) => {
    const pressed = [
      ...document.querySelectorAll("button, a[href], input, select, textarea, [role=option], [role=tab]"),
    ].map((each) => each.closest("label") ?? each);
    const boxes = [...new Set(pressed)].flatMap((each) => {
      const { width, height, right, bottom } = each.getBoundingClientRect();
      const shown = each.checkVisibility({ opacityProperty: true, visibilityProperty: true });
      // For screen readers alone, or out of the window until it has the focus.
      if (!shown || width <= 1 || height <= 1 || right <= 0 || bottom <= 0) return [];
      return [{ name: each.textContent?.trim() || each.tagName, width, height }];
    });
    const small = boxes
      // Half a pixel is lost where a length in rem is drawn.
      .filter(({ width, height }) => Math.min(width, height) < least - 0.5)
      .map(({ name, width, height }) => `${name}: ${Math.round(width)} x ${Math.round(height)}`);
    return { small, looked: boxes.length };
  }, leastPx);
}

/** By how much the page, or what scrolls between its head and foot, is wider than it shows, in CSS px. */
function widerBy(page: Page): Promise<number> {
  return page.evaluate(() => {
    const room = document.querySelector("main")?.parentElement ?? document.body;
    return Math.max(...[document.documentElement, room].map((each) => each.scrollWidth - each.clientWidth));
  });
}

/** The words that say what the device is used for. */
const usedFor = (page: Page) =>
  page
    .getByText(/ only$|^Solo /)
    .filter({ visible: true })
    .first();

/** What only a keyboard has use for. */
const keysShown = (page: Page) =>
  page.locator("kbd").filter({ hasText: /Alt|Shift|Enter|Esc|Space|Ctrl/, visible: true });

/** Looks at a screen at each size, and counts the looks. */
function lookAtSizes(): { readonly look: Look; readonly looked: () => number } {
  let looked = 0;
  return {
    looked: () => looked,
    async look(page, name) {
      for (const [width, height] of deviceSizes) {
        await page.setViewportSize({ width, height });
        const where = `${name} at ${width} x ${height}`;
        const pressed = await measurePressed(page);
        expect.soft(pressed.small, where).toEqual([]);
        expect(pressed.looked, where).toBeGreaterThan(2);
        expect.soft(await widerBy(page), `${where}: too wide`).toBeLessThan(2);
        await expect.soft(keysShown(page), `${where}: keys`).toHaveCount(0);
        if (!name.startsWith("join")) await expect.soft(usedFor(page), `${where}: what for`).toBeVisible();
        await expectForEverybody(page, 5);
        looked += 1;
      }
      const [width, height] = deviceSizes[0];
      await page.setViewportSize({ width, height });
    },
  };
}

test("every screen of a device fits phones and tablets, is for everybody, and has nothing too small for a finger", async ({
  tapeline,
  chromium,
}) => {
  test.setTimeout(1_200_000);
  const { desk } = tapeline;
  const url = await openDemoTable(tapeline);
  const { look, looked } = lookAtSizes();
  await walkDevice(desk, chromium, url, look);
  // Joining, two arrivals, three of the check-in table, and four or five of each test, twice at three sizes.
  expect(looked()).toBe((1 + 2 + 3 + 2 * 4 + 3 * 5) * 2 * deviceSizes.length);
});
