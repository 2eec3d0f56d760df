import { type Browser, expect, type Locator } from "@playwright/test";
import { openDevice, startChromium } from "./browsers.ts";
import { test as base } from "./fixture.ts";
import { letIn, openDemoTable, readCode } from "./joining.ts";

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

/**
 * A person's pace in ms: to think before a step, to point at something, to press a key as an average typist does.
 * Source: the keystroke-level model of Card, Moran and Newell, Communications of the ACM 23 (1980), from memory. It was
 * measured at a desk: thumbs on a phone may be slower.
 */
const pace = { think: 1_350, point: 1_100, key: 280 };
/** The camera finds the code and its link is opened: common practice, no source. */
const scanMs = 5_000;
/** The browser's warning: its details, and on to the address. The test's browser has accepted it. */
const warning = { taps: 2, ms: 2 * (pace.think + pace.point) };
/** The bar of the design for a phone, in ms. */
const barMs = 30_000;

test("a phone joins in less than 30 seconds and ten taps at a person's pace, the organiser's yes among them", async ({
  tapeline,
  chromium,
}) => {
  const { desk } = tapeline;
  const url = await openDemoTable(tapeline);
  const { page, context } = await openDevice(chromium, 360, 640, { isMobile: true });
  const code = (await readCode(desk)).replace(" ", "");
  let taps = warning.taps;
  const tap = async (target: Locator) => {
    await page.waitForTimeout(pace.think + pace.point);
    await target.tap();
    taps += 1;
  };
  await page.waitForTimeout(scanMs);
  const began = performance.now();
  await page.goto(`${url}#${code}`);
  await tap(page.getByLabel("Name of this device"));
  await page.keyboard.type("Red phone", { delay: pace.key });
  await tap(page.getByRole("button", { name: "Ask to join" }));
  await page.getByText("Waiting for the organiser's yes.").waitFor();
  // The organiser sees the name, opens the list, chooses, and lets it in.
  await desk.getByRole("button", { name: "Let it in" }).waitFor();
  await page.waitForTimeout(3 * (pace.think + pace.point));
  taps += 3;
  await letIn(desk, "Red phone", "Core");
  await expect(page.getByRole("button", { name: /^Call the next/ })).toBeVisible();
  const ms = performance.now() - began + scanMs + warning.ms;
  test.info().annotations.push({ type: "joining", description: `${Math.round(ms)} ms, ${taps} taps` });
  console.log(`Joining a phone: ${(ms / 1000).toFixed(1)} s, ${taps} taps`);
  expect(taps).toBeLessThan(10);
  expect(ms).toBeLessThan(barMs);
  await context.close();
});
