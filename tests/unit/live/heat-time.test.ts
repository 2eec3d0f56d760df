import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { followTime } from "../../../renderer/screens/station/live/sync/heatTime.ts";

let said: number[];
let stop: () => void;

beforeEach(() => {
  vi.useFakeTimers();
  said = [];
});
afterEach(() => {
  stop();
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

/** Follows a heat that has just begun, by a clock that goes with the timers. */
function follow(): void {
  const begun = Date.now();
  stop = followTime({ elapsed: () => Date.now() - begun }, (elapsedMs) => said.push(elapsedMs));
}

/** What browsers do with a page behind another (HTML, "update the rendering"): they ask it for no frame. */
function giveNoFrames(): void {
  vi.stubGlobal("requestAnimationFrame", () => 1);
  vi.stubGlobal("cancelAnimationFrame", () => undefined);
}

test("a heat's time goes on in a page behind another, which is given no frames", async () => {
  giveNoFrames();
  follow();
  await vi.advanceTimersByTimeAsync(30_000);
  expect(said.at(-1)).toBe(30_000);
  stop();
  await vi.advanceTimersByTimeAsync(30_000);
  expect(said.at(-1)).toBe(30_000);
});

test("where frames come, it is said with each of them, and no more once nobody follows it", async () => {
  vi.stubGlobal("requestAnimationFrame", (work: () => void) => setTimeout(work, 16));
  vi.stubGlobal("cancelAnimationFrame", clearTimeout);
  follow();
  await vi.advanceTimersByTimeAsync(160);
  expect(said).toEqual([16, 32, 48, 64, 80, 96, 112, 128, 144, 160]);
  stop();
  await vi.advanceTimersByTimeAsync(1_000);
  expect(said).toHaveLength(10);
});
