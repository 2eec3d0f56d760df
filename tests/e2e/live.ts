import { expect, type Locator, type Page } from "@playwright/test";
import type { HeatView } from "../../electron/api/heat/schemas.ts";
import { type TestCode, testCodes } from "../../electron/domain/tests/registry.ts";
import type { HeldClock } from "./held-clock.ts";
import { callDoor } from "./page.ts";
import type { Tapeline } from "./session.ts";

export type LiveHeat = NonNullable<HeatView["heat"]>;

/** An open day with bibs 1 to `count` who take one test alone, at the screen that runs it. */
export async function openLive(
  desk: Page,
  test: TestCode,
  count: number,
  parameters: Partial<Record<TestCode, unknown>> = {},
): Promise<void> {
  await callDoor(desk, "day.create", {
    sure: true,
    date: "2026-11-14",
    title: "Autumn testing day",
    parameters,
  });
  await callDoor(desk, "day.open", { sure: true });
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
async function viewOf(eyes: Eyes, test: TestCode): Promise<HeatView> {
  const input = encodeURIComponent(JSON.stringify({ test, lengths: "cm" }));
  const script = `fetch("/trpc/heat.view?input=${input}").then((response) => response.text())`;
  return JSON.parse(String(await eyes.evaluate(script))).result.data;
}

export async function heatOf(eyes: Eyes, test: TestCode): Promise<LiveHeat> {
  const { heat } = await viewOf(eyes, test);
  if (heat === null) throw new Error("There is no heat at hand.");
  return heat;
}

/**
 * Between which moments of this process's own clock a heat was at 0, by a desk whose clock runs: an answer was made after
 * it was asked for and before it came, on however busy a machine.
 */
export async function zeroWithin(eyes: Eyes, test: TestCode): Promise<{ from: number; until: number }> {
  let [from, until] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (let look = 0; look < 6; look += 1) {
    const asked = performance.now();
    const elapsedMs = (await heatOf(eyes, test)).elapsedMs ?? Number.NaN;
    from = Math.max(from, asked - elapsedMs);
    until = Math.min(until, performance.now() - elapsedMs);
  }
  return { from, until };
}

/** The clocks of the desk and of the window are where they are since the heat was at 0, at `zero` of the session's. */
export async function checkClock(
  { clock }: Tapeline,
  eyes: Eyes,
  test: TestCode,
  zero: number,
): Promise<void> {
  const elapsedMs = clock.now() - zero;
  expect((await heatOf(eyes, test)).elapsedMs).toBe(elapsedMs);
  const shown = () => eyes.evaluate(`document.querySelector('[role="timer"]')?.textContent ?? ""`);
  await expect.poll(shown).toBe(`0:${String(Math.floor(elapsedMs / 1000)).padStart(2, "0")}`);
}

/**
 * Starts a heat by its key while the clocks stand still, and checks that the desk keeps the start at that very moment.
 * Returns when it is at 0, by the session's clock.
 */
export async function startNow(
  { desk, clock }: Tapeline,
  keys: Keys,
  test: TestCode,
  countInMs: number,
): Promise<number> {
  await keys.press("Space");
  await expect.poll(async () => (await heatOf(desk, test)).elapsedMs).toBe(-countInMs);
  return clock.now() + countInMs;
}

/** Lets time pass until `at` by the session's clock. */
export function until(clock: HeldClock, at: number): Promise<void> {
  return clock.pass(at - clock.now());
}

/** Starts a heat whose clock is already at `seconds`: the door takes a start that was a while ago. */
export async function startedAgo(desk: Page, test: TestCode, seconds: number): Promise<void> {
  const { heatId } = await heatOf(desk, test);
  await callDoor(desk, "heat.start", { heatId, startedAgoMs: seconds * 1000 + 3_000 });
  await expect(laneOf(desk, 1)).toHaveAttribute("data-phase", /./);
}

/** How far a lane is, as the page shows it. */
async function phaseOf(eyes: Eyes, lane: number): Promise<unknown> {
  return eyes.evaluate(`document.querySelector('[data-lane="${lane}"]')?.dataset.phase ?? ""`);
}

export async function isDone(eyes: Eyes, lane: number): Promise<void> {
  await expect.poll(() => phaseOf(eyes, lane)).toBe("done");
}

/** Presses keys and counts them. */
export interface Keys {
  press(key: string): Promise<void>;
  pressed(): number;
}

/** Where a window is looked at and driven from: its page, or the shell once the page has crashed. */
export interface Place {
  readonly eyes: Eyes;
  readonly keys: Keys;
}

export function countedKeys(desk: Page): Keys {
  let pressed = 0;
  return {
    async press(key) {
      pressed += 1;
      await desk.keyboard.press(key);
    },
    pressed: () => pressed,
  };
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

export function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const middle = Math.floor(sorted.length / 2);
  const [low = 0, high = 0] = [sorted[sorted.length % 2 === 0 ? middle - 1 : middle], sorted[middle]];
  return (low + high) / 2;
}
