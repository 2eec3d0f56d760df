import { type Browser, type CDPSession, expect, type Page } from "@playwright/test";
import { freePort } from "../network/table.ts";
import { openDevice } from "./browsers.ts";
import { deviceSizes } from "./device-screens.ts";
import { joinAs, test } from "./devices.ts";
import { heatOf, laneOf, openLive } from "./live.ts";
import { callDoor } from "./page.ts";
import type { Tapeline } from "./session.ts";

/** Stops on a phone that come so close that the second finger can't have seen what the first one did to the screen. */

type Code = "core" | "push-up" | "endurance";

/** A phone with a heat that has been going for a while. */
async function openRunning(
  { desk }: Tapeline,
  chromium: Browser,
  [code, place, startedAgoMs, height]: readonly [Code, string, number, number],
): Promise<Page> {
  const [width] = deviceSizes[0];
  await openLive(desk, code, 6);
  const port = await freePort();
  await callDoor(desk, "network.turnOn", { address: "127.0.0.1", port });
  await desk.evaluate(() => {
    location.hash = "/devices";
  });
  const { page } = await openDevice(chromium, width, height, { isMobile: true });
  await joinAs(desk, { page }, `https://127.0.0.1:${port}/`, "Red phone", place);
  await page.getByRole("button", { name: /^Call the next/ }).tap();
  await page.getByRole("dialog").getByRole("textbox").fill("QA");
  await page.keyboard.press("Enter");
  await page.getByRole("button", { name: /^Start \d/ }).waitFor();
  const { heatId } = await heatOf(page, code);
  await callDoor(page, "heat.start", { heatId, startedAgoMs });
  await expect(laneOf(page, 1)).toHaveAttribute("data-phase", "going");
  // As long as a finger needs to see a change.
  await page.waitForTimeout(800);
  return page;
}

interface Point {
  readonly x: number;
  readonly y: number;
}

/** Points in each lane's stop, as the screen is now: its middle, and near its upper and lower edge. */
function stopsOf(page: Page, key: string): Promise<{ middle: Point; upper: Point; lower: Point }[]> {
  return page.locator("main ol > li[data-lane]").evaluateAll(
    (lanes, wanted) =>
      lanes.map((lane) => {
        const { x, y, width, height } = (lane.querySelector(wanted) ?? lane).getBoundingClientRect();
        const at = (share: number) => ({ x: x + width / 2, y: y + height * share });
        return { middle: at(0.5), upper: at(0.06), lower: at(0.94) };
      }),
    key,
  );
}

async function touch(tools: CDPSession, point: Point): Promise<void> {
  await Promise.all([
    tools.send("Input.dispatchTouchEvent", { type: "touchStart", touchPoints: [point] }),
    tools.send("Input.dispatchTouchEvent", { type: "touchEnd", touchPoints: [] }),
  ]);
}

/** The lanes that a heat has stops of. */
async function stopped(page: Page, code: Code): Promise<number[]> {
  const { events } = await heatOf(page, code);
  return events.flatMap(({ kind, lane }) => (kind === "stop" && lane !== null ? [lane] : [])).sort();
}

for (const [code, place, ago, key, height] of [
  ["core", "Core", 57_000, "button", deviceSizes[0][1]],
  // So high that all lanes are in sight: a finger that scrolls is another matter.
  ["push-up", "Strength", 20_000, "button:last-of-type", 1_920],
] as const) {
  test(`of stops in the ${code} that come within a tenth of a second on a phone, none is lost and none is another's`, async ({
    tapeline,
    chromium,
  }) => {
    const page = await openRunning(tapeline, chromium, [code, place, ago, height]);
    const tools = await page.context().newCDPSession(page);
    const stops = await stopsOf(page, key);
    const [first, second, third, fourth] = stops;
    if (!first || !second || !third || !fourth) throw new Error("There are too few lanes.");
    // Each aimed at where its lane was before the first one ended; the first is touched twice, as by a trembling finger.
    // All are sent at once and come in order: a slow machine must not make a moment longer than a finger's.
    const touched = [first.middle, third.lower, second.upper, first.middle, fourth.middle];
    await Promise.all(touched.map((point) => touch(tools, point)));
    await expect.poll(() => stopped(page, code)).toEqual([1, 2, 3, 4]);
    await page.waitForTimeout(1_000);
    expect(await stopped(page, code)).toEqual([1, 2, 3, 4]);
    await expect(page.getByRole("dialog")).toHaveCount(0);
    await page.context().close();
  });
}

test("a table that no finger has touched looks at no key of its stations", async ({ tapeline }) => {
  const { desk } = tapeline;
  await openLive(desk, "core", 2);
  await expect(desk.getByRole("button", { name: /^Call the next/ })).toBeVisible();
  const looks = await desk.evaluate(async () => {
    let count = 0;
    const look = document.querySelectorAll;
    document.querySelectorAll = ((selector: string) => {
      if (selector.includes("button, a[href]")) count += 1;
      return look.call(document, selector);
    }) as typeof document.querySelectorAll;
    await new Promise((resolve) => setTimeout(resolve, 1_500));
    document.querySelectorAll = look;
    return count;
  });
  expect(looks).toBe(0);
});
