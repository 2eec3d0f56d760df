import { type Browser, expect, type Page } from "@playwright/test";
import { freePort } from "../network/table.ts";
import { type Device, openDevice } from "./browsers.ts";
import { deviceSizes } from "./device-screens.ts";
import { joinAs, test } from "./devices.ts";
import { notInSight } from "./in-sight.ts";
import { heatOf, laneOf, openLive } from "./live.ts";
import { callDoor } from "./page.ts";
import type { Tapeline } from "./session.ts";

/** A phone that runs a test live, pressed with fingers alone. */

const [phone, tablet] = deviceSizes;

/** A device with a station's test and so many who wait for it. */
async function joinStation(
  { desk }: Tapeline,
  chromium: Browser,
  [width, height]: readonly [number, number],
  [code, place]: readonly ["vertical" | "core", string],
): Promise<Device> {
  await openLive(desk, code, 8);
  const port = await freePort();
  await callDoor(desk, "network.turnOn", { address: "127.0.0.1", port });
  await desk.evaluate(() => {
    location.hash = "/devices";
  });
  const device = await openDevice(chromium, width, height, { isMobile: true });
  await joinAs(desk, device, `https://127.0.0.1:${port}/`, "Red phone", place);
  return device;
}

async function callFirst(page: Page): Promise<void> {
  await page.getByRole("button", { name: /^Call the next/ }).tap();
  const initials = page.getByRole("dialog").getByRole("textbox");
  await initials.fill("QA");
  await initials.press("Enter");
}

/** A person's fingers: they come down one after the other, and never on what has only just come. */
const betweenTapsMs = 150;
const settledMs = 800;

async function typeOnPad(page: Page, text: string): Promise<void> {
  for (const sign of text) {
    const name = sign === "½" ? "half" : sign;
    await page.getByRole("button", { name, exact: true }).tap();
    await page.waitForTimeout(betweenTapsMs);
  }
}

const field = (page: Page) => page.getByRole("status", { name: /^(Standing reach|Height touched)/ });

/** Types a reading and waits until it went in by itself. */
async function takeReading(page: Page, text: string): Promise<void> {
  await typeOnPad(page, text);
  await expect(field(page)).toHaveAccessibleName(/:\s*$/);
  await page.waitForTimeout(settledMs);
}

/** A phone at the leap, with its first athlete's reading to come. */
async function openLeap(tapeline: Tapeline, chromium: Browser): Promise<Device> {
  const device = await joinStation(tapeline, chromium, phone, ["vertical", "Power"]);
  await callFirst(device.page);
  await expect(field(device.page)).toBeVisible();
  return device;
}

/** Where each key of the pad and the key that saves are. */
function places(page: Page): Promise<string[]> {
  return page.locator("fieldset button, h2 ~ [role=status]").evaluateAll((all) =>
    all.map((each) => {
      const { x, y, width, height } = each.getBoundingClientRect();
      return [x, y, width, height].map(Math.round).join(" ");
    }),
  );
}

test("a phone at the leap has the athlete, the reading, all its keys and the save in one sight, and none ever moves", async ({
  tapeline,
  chromium,
}) => {
  const { page, context } = await openLeap(tapeline, chromium);
  const wanted = '[data-test="vertical"] :is(fieldset button, [role=status], h2, strong):not(li *)';
  const save = page.getByRole("button", { name: /^(Save the|No, change it|Yes, save it)/ });
  async function looked(state: string, before?: readonly string[]): Promise<string[]> {
    expect.soft(await notInSight(page, wanted), state).toEqual([]);
    const box = await save.first().boundingBox();
    expect.soft((box?.y ?? 1e4) + (box?.height ?? 0), `${state}: the save`).toBeLessThan(phone[1] - 40);
    const now = await places(page);
    if (before !== undefined) expect.soft(now, state).toEqual(before);
    return now;
  }
  await page.waitForTimeout(settledMs);
  const first = await looked("nothing measured");
  const padOf = page.locator("[data-whose]");
  await expect.soft(padOf).toHaveAttribute("data-whose", "1 Skater 1");
  expect(first.length).toBeGreaterThan(12);
  await takeReading(page, "219");
  await looked("reach saved", first);
  await typeOnPad(page, "264");
  await looked("typed", first);
  await expect(field(page)).toHaveAccessibleName(/2 of 3:\s*$/);
  await looked("one jump saved", first);
  await page.waitForTimeout(settledMs);
  await typeOnPad(page, "300");
  await expect(page.getByText(/81 cm .* is a very high jump/)).toBeVisible();
  await looked("asked", first);
  await page.waitForTimeout(settledMs);
  await page.getByRole("button", { name: /^No, change it/ }).tap();
  await typeOnPad(page, "267");
  await expect(field(page)).toHaveAccessibleName(/3 of 3:\s*$/);
  await takeReading(page, "261");
  await expect(field(page)).toHaveAccessibleName(/^Standing reach:\s*$/);
  // Somebody is done and another at it: nothing lies over the keys.
  await looked("the next athlete", first);
  await expect.soft(padOf).toHaveAttribute("data-whose", "2 Skater 2");
  expect.soft(await notInSight(page, "[data-whose]")).toEqual([]);
  await context.close();
});

/** The lengths that a heat's standing taps took, in mm. */
async function lengthsOf(page: Page): Promise<number[]> {
  const { events } = await heatOf(page, "vertical");
  const undone = events.map(({ kind, detail }) =>
    kind === "undo" ? (detail as { readonly eventId: string }).eventId : "",
  );
  return events
    .filter(({ id, kind }) => (kind === "reach" || kind === "touch") && !undone.includes(id))
    .map(({ detail }) => (detail as { readonly length: { readonly halves: number } }).length.halves * 5);
}

test("a half after a reading went in is that reading's, an undo names it, and a saved jump opens its correction", async ({
  tapeline,
  chromium,
}) => {
  const { page, context } = await openLeap(tapeline, chromium);
  await page.waitForTimeout(settledMs);
  await takeReading(page, "219");
  await takeReading(page, "249");
  await expect(field(page)).toHaveAccessibleName(/2 of 3:\s*$/);
  await typeOnPad(page, "½");
  await expect.poll(() => lengthsOf(page)).toEqual([2190, 2495]);
  await expect(field(page)).toHaveAccessibleName(/2 of 3:\s*$/);
  await expect(page.getByRole("button", { name: "Undo: 1 Skater 1, touch 249.5 cm" })).toBeVisible();
  // A second half belongs to nothing.
  await typeOnPad(page, "½");
  await takeReading(page, "255");
  await expect.poll(() => lengthsOf(page)).toEqual([2190, 2495, 2550]);
  const jump = page.getByRole("button", { name: /correct jump 1$/ });
  // Brought into sight without a finger, it comes under one only after a look.
  await jump.scrollIntoViewIfNeeded();
  await page.waitForTimeout(settledMs);
  await jump.tap();
  const dialog = page.getByRole("dialog");
  await expect(dialog.getByRole("textbox", { name: /^Touch/ })).toHaveValue("249.5");
  await context.close();
});

test("a second tap where the next were called starts no clock, and an undo moves nothing at a plank", async ({
  tapeline,
  chromium,
}) => {
  const { page, context } = await joinStation(tapeline, chromium, tablet, ["core", "Core"]);
  const call = page.getByRole("button", { name: /^Call the next/ });
  await expect(call).toBeVisible();
  const box = (await call.boundingBox()) ?? { x: 0, y: 0, width: 0, height: 0 };
  await callFirst(page);
  const start = page.getByRole("button", { name: /^Start 6 lanes/ });
  await expect(start).toBeVisible();
  await page.touchscreen.tap(box.x + box.width / 2, box.y + box.height / 2);
  await page.waitForTimeout(settledMs);
  expect((await heatOf(page, "core")).state).toBe("gathering");
  const top = async (lane: number) =>
    (
      await laneOf(page, lane)
        .or(page.locator("main ol li").nth(lane - 1))
        .first()
        .boundingBox()
    )?.y;
  const before = await top(1);
  await page.getByRole("button", { name: /Skater 6/ }).tap();
  await page.waitForTimeout(settledMs);
  await page.getByRole("button", { name: /^Send back/ }).tap();
  await expect(page.getByRole("button", { name: /^Start 5 lanes/ })).toBeVisible();
  expect(await top(1)).toBe(before);
  await page.waitForTimeout(settledMs);
  await page.getByRole("button", { name: /^Start 5 lanes/ }).tap();
  await expect(laneOf(page, 1)).toHaveAttribute("data-phase", "going");
  const end = page.getByRole("button", { name: /^End this heat/ });
  const at = await end.boundingBox();
  await page.waitForTimeout(4_000);
  await laneOf(page, 1).getByRole("button").tap();
  await expect(page.getByRole("button", { name: /^Undo: 1 Skater 1/ })).toBeVisible();
  expect(await end.boundingBox()).toEqual(at);
  // Whose the lane is stays to be read, whole.
  const name = laneOf(page, 1).getByText("Skater 1", { exact: true });
  expect(await name.evaluate((each) => each.scrollWidth - each.clientWidth)).toBeLessThan(2);
  await context.close();
});
