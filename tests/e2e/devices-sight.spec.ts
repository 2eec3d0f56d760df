import { type Browser, expect, type Page } from "@playwright/test";
import { openDevice } from "./browsers.ts";
import { deviceSizes, speakOther } from "./device-screens.ts";
import { joinAs, test } from "./devices.ts";
import { notInSight } from "./in-sight.ts";
import { openDemoTable } from "./joining.ts";
import { heatOf } from "./live.ts";
import { callDoor } from "./page.ts";
import type { Tapeline } from "./session.ts";

/** What somebody with a phone has to see without scrolling: what was saved, what is asked, and every key of a reading. */

const [phone, upright, lying] = deviceSizes;
const button = (page: Page, name: string | RegExp) => page.getByRole("button", { name });

/** A person looks before pressing what has only just come (`useStillness`), in ms. */
const stillMs = 800;

/** A phone at the demo's station, with the first ones called there. */
async function openCalled(
  { desk }: Tapeline,
  chromium: Browser,
  place: string,
  [width, height]: readonly [number, number] = phone,
): Promise<Page> {
  const url = await openDemoTable({ desk });
  const { page } = await openDevice(chromium, width, height, { isMobile: true });
  await joinAs(desk, { page }, url, "Red phone", place);
  await button(page, /^Call the next/).tap();
  const initials = page.getByRole("dialog").getByRole("textbox");
  await initials.fill("QA");
  await initials.press("Enter");
  await button(page, /^(?:End this heat|Start \d)/)
    .first()
    .waitFor();
  await page.waitForTimeout(stillMs);
  return page;
}

async function typeReading(page: Page, digits: string): Promise<void> {
  for (const name of digits) await page.getByRole("button", { name, exact: true }).tap();
  await expect(page.getByRole("status", { name: /^(Standing reach|Height touched)/ })).toHaveAccessibleName(
    /:\s*$/,
  );
  await page.waitForTimeout(stillMs);
}

test("a phone at the leap says what went in, the result of whoever is done, and leads to the question about it", async ({
  tapeline,
  chromium,
}) => {
  const page = await openCalled(tapeline, chromium, "Power");
  const saved = '[data-test="vertical"] h2 ~ div:has(> p) > :not(p:first-child)';
  const says = async (text: string | RegExp) => {
    await expect(page.locator(saved)).toContainText(text);
    expect(await notInSight(page, saved)).toEqual([]);
  };
  await typeReading(page, "219");
  await says("Standing reach saved: 219 cm");
  await typeReading(page, "264");
  await says(/Jump 1 saved: 45 cm/);
  await typeReading(page, "258");
  await says(/Jump 2 saved: 39 cm/);
  // Far more than the last time: the table asks about it, below what the phone shows.
  await typeReading(page, "286");
  await says(/^35 .*: 67 cm/);
  const asked = page.locator(saved).getByRole("button", { name: "Is this right?" });
  await asked.tap();
  const yes = button(page, "Yes, it is right").filter({ visible: true });
  await expect(yes).toBeInViewport({ ratio: 1 });
  await page.waitForTimeout(stillMs);
  await yes.tap();
  await expect(asked).toHaveCount(0);
  await expect(page.locator(saved)).toContainText("Personal best");
  await page.context().close();
});

const keysOf = {
  vertical: '[data-test="vertical"] :is(fieldset button, h2)',
  agility: '[data-test="agility"] [data-test="agility"] :is(button, h2)',
} as const;

for (const [code, place, size] of [
  ["vertical", "Power", phone],
  ["agility", "Agility", phone],
  ["agility", "Agility", upright],
  ["agility", "Agility", lying],
] as const)
  test(`all keys of the ${code} are in sight on ${size.join(" x ")} in both languages, beside somebody else's heat`, async ({
    tapeline,
    chromium,
  }) => {
    const page = await openCalled(tapeline, chromium, place, size);
    await callDoor(tapeline.desk, "heat.gather", {
      ...{ test: code, heatId: crypto.randomUUID(), lanes: 2, by: "QA" },
    });
    await expect(page.getByText(/^The table: \d/)).toBeVisible();
    if (code === "agility") await countTrial(page);
    for (const language of ["en", "es"]) {
      await speakOther(page, language);
      await page.waitForTimeout(stillMs);
      expect.soft(await notInSight(page, keysOf[code]), language).toEqual([]);
    }
    await page.context().close();
  });

test("the names in the lanes of a circuit on a tablet are no broken words", async ({
  tapeline,
  chromium,
}) => {
  const page = await openCalled(tapeline, chromium, "Endurance", upright);
  const { heatId } = await heatOf(page, "endurance");
  await callDoor(page, "heat.start", { heatId, startedAgoMs: 65_000 });
  const names = page.locator("main ol > li[data-lane] strong + span");
  await expect.poll(() => names.count()).toBeGreaterThan(5);
  // No word of the demo's names is wider.
  for (const [width, height] of [upright, lying]) {
    await page.setViewportSize({ width, height });
    const widths = await names.evaluateAll((all) => all.map((each) => each.getBoundingClientRect().width));
    expect.soft(Math.min(...widths), `${width} x ${height}`).toBeGreaterThan(75);
  }
  await page.context().close();
});

/** Lets a trial's time go by, until it is to be counted. */
async function countTrial(page: Page): Promise<void> {
  await button(page, /^Start the count-in/).tap();
  await page.getByRole("heading", { name: /^Time!/ }).waitFor({ timeout: 60_000 });
  expect((await heatOf(page, "agility")).events.length).toBeGreaterThan(0);
}
