import { type Browser, expect, type Page } from "@playwright/test";
import { expectForEverybody } from "./axe.ts";
import { startChromium } from "./browsers.ts";
import { deviceSizes, walkDevice } from "./device-screens.ts";
import { test as base } from "./fixture.ts";
import { openDemoTable } from "./joining.ts";

/** Every screen of a device, at the sizes of phones and tablets, in both languages. */

const test = base.extend<object, { chromium: Browser }>({
  chromium: [
    // biome-ignore lint/correctness/noEmptyPattern: the runner reads the names of what is wanted from this pattern.
    async ({}, use) => {
      const browser = await startChromium();
      await use(browser);
      await browser.close();
    },
    { scope: "worker", timeout: 600_000 },
  ],
});

/** WCAG 2.2 asks for 24 CSS px (2.5.8, AA) and 44 (2.5.5, AAA); the issue of these screens for the latter. */
const leastPx = 44;

/** What is pressed and smaller than a finger needs, with its size. A control that nobody sees is pressed by its label. */
function tooSmall(page: Page): Promise<string[]> {
  return page.evaluate((least) => {
    const pressed = [
      ...document.querySelectorAll("button, a[href], input, select, textarea, [role=option], [role=tab]"),
    ].map((each) => each.closest("label") ?? each);
    return [...new Set(pressed)].flatMap((each) => {
      const { width, height, right, bottom } = each.getBoundingClientRect();
      const shown = each.checkVisibility({ opacityProperty: true, visibilityProperty: true });
      // For screen readers alone, or out of the window until it has the focus.
      if (!shown || width <= 1 || height <= 1 || right <= 0 || bottom <= 0) return [];
      // Half a pixel is lost where a length in rem is drawn.
      if (Math.min(width, height) >= least - 0.5) return [];
      return [`${each.textContent?.trim() || each.tagName}: ${Math.round(width)} x ${Math.round(height)}`];
    });
  }, leastPx);
}

/** By how much the page or what scrolls in it is wider than it shows, in CSS px. */
function widerBy(page: Page): Promise<number> {
  return page.evaluate(() => {
    const rooms = [document.documentElement, ...document.querySelectorAll("main, main > *")];
    const outer = document.querySelector("main")?.parentElement;
    if (outer != null) rooms.push(outer);
    return Math.max(...rooms.map((room) => room.scrollWidth - room.clientWidth));
  });
}

/** What only a keyboard has use for. */
const keysShown = (page: Page) =>
  page.locator("kbd").filter({ hasText: /Alt|Shift|Enter|Esc|Space|Ctrl/, visible: true });

test("every screen of a device fits phones and tablets, is for everybody, and has nothing too small for a finger", async ({
  tapeline,
  chromium,
}) => {
  test.setTimeout(1_200_000);
  const { desk } = tapeline;
  const url = await openDemoTable(tapeline);
  let looked = 0;
  await walkDevice(desk, chromium, url, async (page, name) => {
    for (const [width, height] of deviceSizes) {
      await page.setViewportSize({ width, height });
      const where = `${name} at ${width} x ${height}`;
      expect.soft(await tooSmall(page), where).toEqual([]);
      expect.soft(await widerBy(page), `${where}: too wide`).toBeLessThan(2);
      await expect.soft(keysShown(page), `${where}: keys`).toHaveCount(0);
      await expectForEverybody(page, 5);
      looked += 1;
    }
    const [width, height] = deviceSizes[0];
    await page.setViewportSize({ width, height });
  });
  // Joining, three of the check-in table, and four or five of each test, twice at three sizes.
  expect(looked).toBe((1 + 3 + 2 * 4 + 3 * 5) * 2 * deviceSizes.length);
});
