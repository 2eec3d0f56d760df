import { expect, type Locator, type Page } from "@playwright/test";
import type { HeatView } from "../../electron/api/heat/schemas.ts";
import type { TestCode } from "../../electron/domain/protocols/protocol.ts";
import { callDoor } from "./page.ts";
import { type KeyDown, timedKey } from "./timed-key.ts";

export type LiveHeat = NonNullable<HeatView["heat"]>;

const testCodes: readonly TestCode[] = ["push-up", "agility", "vertical", "core", "endurance"];

/** An open day with bibs 1 to `count` who take one test alone, at the screen that runs it. */
export async function openLive(
  desk: Page,
  test: TestCode,
  count: number,
  parameters: Partial<Record<TestCode, unknown>> = {},
): Promise<void> {
  await callDoor(desk, "day.create", { date: "2026-11-14", title: "Autumn testing day", parameters });
  await callDoor(desk, "day.open", {});
  const leaveOut = testCodes.filter((each) => each !== test);
  for (let bib = 1; bib <= count; bib += 1) {
    const outcome = { bib, leaveOut, board: "bib", share: false, guardianConsent: false, by: "QA" };
    const who = { league: "North Quay", name: `Skater ${bib}`, number: "", birthYear: 1990 };
    await callDoor(desk, "checkIn.walkUp", { ...who, ...outcome });
  }
  await desk.reload();
  await goToLive(desk, test);
}

export async function goToLive(desk: Page, test: TestCode): Promise<void> {
  await desk.evaluate((path) => {
    location.hash = path;
  }, `/station/${test}`);
  await expect(desk.locator(`[data-whole-window] [data-test="${test}"]`).first()).toBeVisible();
}

/** Runs a script in a page and says what it comes to: a `Page`, or the window itself (`kills.ts`). */
export interface Eyes {
  evaluate(script: string): Promise<unknown>;
}

/** What the desk tells of a station's heat, asked by the page itself. */
export async function viewOf(eyes: Eyes, test: TestCode): Promise<HeatView> {
  const input = encodeURIComponent(JSON.stringify({ test, lengths: "cm" }));
  const script = `fetch("/trpc/heat.view?input=${input}").then((response) => response.text())`;
  return JSON.parse(String(await eyes.evaluate(script))).result.data;
}

export async function heatOf(eyes: Eyes, test: TestCode): Promise<LiveHeat> {
  const { heat } = await viewOf(eyes, test);
  if (heat === null) throw new Error("There is no heat at hand.");
  return heat;
}

/** When the heat was at 0 by the desk, in ms of this process's clock, and by how much that may be wrong. */
export async function zeroOf(eyes: Eyes, test: TestCode): Promise<{ at: number; doubt: number }> {
  let best = { at: 0, doubt: Number.POSITIVE_INFINITY };
  for (let look = 0; look < 12; look += 1) {
    const asked = performance.now();
    const { elapsedMs } = await heatOf(eyes, test);
    const heard = performance.now();
    const doubt = (heard - asked) / 2;
    if (doubt < best.doubt) best = { at: heard - doubt - (elapsedMs ?? 0), doubt };
  }
  return best;
}

/** Waits for the clock on the screen to turn to a new second, and says which, and when by the machine's wall clock. */
const nextSecond = `new Promise((resolve) => {
  const read = () => document.querySelector('[role="timer"]')?.textContent ?? "";
  const before = read();
  requestAnimationFrame(function look() {
    const text = read();
    if (text === before) requestAnimationFrame(look);
    else resolve(JSON.stringify({ text, at: Date.now() }));
  });
})`;

/** When the heat was at 0 by the clock that somebody in front of the window sees, in ms of this process's clock. */
export async function shownZero(eyes: Eyes): Promise<number> {
  const { text, at } = JSON.parse(String(await eyes.evaluate(nextSecond)));
  const [minutes = 0, seconds = 0] = String(text).split(":").map(Number);
  // Page and runner share one machine: its wall time, read by both just now, links their clocks.
  return performance.now() - (Date.now() - at) - (minutes * 60 + seconds) * 1000;
}

/** Notes when keys come down, by the events' own time stamps. Once a page. */
export async function noteKeys(desk: Page): Promise<void> {
  await desk.evaluate(() => {
    window.addEventListener(
      "keydown",
      ({ key, timeStamp }) => {
        const at = Date.now() - (performance.now() - timeStamp);
        document.documentElement.dataset.lastKey = JSON.stringify({ key, at });
      },
      true,
    );
  });
}

/** When the last key came down, in ms of this process's clock. */
export async function lastKeyAt(desk: Page): Promise<number> {
  const { at } = JSON.parse(String(await desk.evaluate("document.documentElement.dataset.lastKey")));
  return performance.now() - (Date.now() - at);
}

/**
 * Starts a heat by its key. Returns when it is at 0 by the desk, which is what its signals sound by, in ms of this
 * process's clock; says by how much that is off the finger.
 */
export async function startNow(desk: Page, keys: Keys, test: TestCode): Promise<number> {
  await noteKeys(desk);
  await keys.press("Space");
  const finger = (await lastKeyAt(desk)) + 3_000;
  await expect.poll(async () => (await heatOf(desk, test)).elapsedMs).not.toBeNull();
  const { at, doubt } = await zeroOf(desk, test);
  console.log(
    `${test}: the start is kept ${(at - finger).toFixed(1)} ms off its key (± ${doubt.toFixed(1)})`,
  );
  return at;
}

/** Starts a heat whose clock is already at `seconds`: the door takes a start that was a while ago. */
export async function startedAgo(desk: Page, test: TestCode, seconds: number): Promise<void> {
  const { heatId } = await heatOf(desk, test);
  await callDoor(desk, "heat.start", { heatId, startedAgoMs: seconds * 1000 + 3_000 });
  await expect(desk.getByRole("timer")).toBeVisible();
}

/** How far a lane is, as the page shows it. */
export async function phaseOf(eyes: Eyes, lane: number): Promise<unknown> {
  return eyes.evaluate(`document.querySelector('[data-lane="${lane}"]')?.dataset.phase ?? ""`);
}

export async function isDone(eyes: Eyes, lane: number): Promise<void> {
  await expect.poll(() => phaseOf(eyes, lane), { timeout: 15_000 }).toBe("done");
}

/** Presses keys and counts them. */
export interface Keys {
  /** @param at when the finger comes down, in ms of this process's clock; without it, whenever the runner gets there. */
  press(key: string, at?: number): Promise<void>;
  pressed(): number;
}

export function countedKeys(desk: Page): Keys {
  let pressed = 0;
  return {
    async press(key, at) {
      pressed += 1;
      if (at === undefined) await desk.keyboard.press(key);
      else await pressTimed(desk, timedKey(key, at));
    },
    pressed: () => pressed,
  };
}

async function pressTimed(desk: Page, down: KeyDown): Promise<void> {
  const tools = await desk.context().newCDPSession(desk);
  await tools.send("Input.dispatchKeyEvent", down);
  await tools.send("Input.dispatchKeyEvent", { ...down, type: "keyUp" });
  await tools.detach();
}

/** Calls the next into the lanes, and says who keys when the window asks. */
export async function gather(desk: Page, keys: Keys, lanes: number): Promise<void> {
  await keys.press("n");
  const initials = desk.getByRole("dialog").getByRole("textbox");
  const start = desk.getByRole("button", { name: new RegExp(`^Start ${lanes} lane`) });
  await expect(initials.or(start)).toBeVisible();
  if (await initials.isVisible()) {
    await initials.fill("QA");
    await initials.press("Enter");
  }
  await expect(start).toBeVisible();
}

/** Sets how many lanes the station has by the keys that the screen shows. */
export async function setLanes(desk: Page, lanes: number): Promise<void> {
  const count = desk.getByText(/^\d+ lanes?$/);
  for (let tries = 0; tries < 24; tries += 1) {
    const now = Number.parseInt((await count.textContent()) ?? "", 10);
    if (now === lanes) return;
    await desk.keyboard.press(now < lanes ? "m" : "f");
    await expect(count).not.toHaveText(new RegExp(`^${now} lane`));
  }
  throw new Error(`The station does not come to ${lanes} lanes.`);
}

export function laneOf(desk: Page, lane: number): Locator {
  return desk.locator(`[data-lane="${lane}"]`);
}

/** Waits until `ms` on this process's clock. */
export async function until(ms: number): Promise<void> {
  const left = ms - performance.now();
  if (left > 0) await new Promise((resolve) => setTimeout(resolve, left));
}

export function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const middle = Math.floor(sorted.length / 2);
  const [low = 0, high = 0] = [sorted[sorted.length % 2 === 0 ? middle - 1 : middle], sorted[middle]];
  return (low + high) / 2;
}
