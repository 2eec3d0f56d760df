import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect } from "@playwright/test";
import { test as base } from "./fixture.ts";
import { gridReport } from "./metronome/report.ts";
import { buildPage, inWindow } from "./metronome/window.ts";

/** The metronome in the real window: its sounds sample by sample, and one minute in real time. */

/** What the metronome takes for a leap at the least (`audio-clock.ts`), in ms. */
const leastLeapMs = 3;

const test = base.extend<object, { built: string }>({
  built: [
    // biome-ignore lint/correctness/noEmptyPattern: the runner reads the names of what is wanted from this pattern.
    async ({}, use) => {
      const folder = await mkdtemp(join(tmpdir(), "tapeline-metronome-page-"));
      await buildPage(folder);
      await use(folder);
      await rm(folder, { recursive: true, force: true, maxRetries: 5 });
    },
    { scope: "worker", timeout: 600_000 },
  ],
});

test("every sound begins on its sample, without a click, where a hall is quiet", async ({ stage, built }) => {
  const { sounds, takenBack } = await inWindow(stage, built, "sounds");
  expect(sounds).toHaveLength(8);
  for (const { name, peak, edge, afterwards, between1And4kHz, onsetErrorsMs } of sounds) {
    const worst = Math.max(...onsetErrorsMs.map(Math.abs));
    console.log(
      `${name}: onset ${worst.toFixed(3)} ms off at worst, peak ${peak.toFixed(2)},`,
      `${(between1And4kHz * 100).toFixed(0)} % of its energy in 1 to 4 kHz, edge ${edge.toFixed(3)}`,
    );
    expect.soft(worst, name).toBeLessThan(1);
    expect.soft(peak, name).toBeLessThanOrEqual(1);
    expect.soft(peak, name).toBeGreaterThan(0.25);
    expect.soft(between1And4kHz, name).toBeGreaterThan(0.7);
    expect.soft(edge, name).toBeLessThan(0.1);
    expect.soft(afterwards, name).toBe(0);
  }
  // Nothing is heard of a sound that was taken back.
  expect(takenBack).toBe(0);
});

test("a minute of metronome at 40 beats keeps its grid while the page hangs and its window is hidden", async ({
  stage,
  built,
}) => {
  const minute = await inWindow(stage, built, "minute");
  const report = gridReport(minute, 60_000);
  console.log(report.lines.join("\n"));

  expect(minute.state).toBe(minute.device ? "ready" : "none");
  // As often as a busy machine gets to it; nothing of this is the product's.
  expect(minute.hangs.count).toBeGreaterThan(30);
  expect(minute.hangs.longest).toBeGreaterThanOrEqual(200);
  // It was hidden for 20 s of it, and it was not for all of it.
  expect(minute.hiddenStamps).toBeGreaterThan(5);
  expect(minute.hiddenStamps).toBeLessThan(minute.stamps.length / 2);
  // A count-in of four, the start, and a beat every 1.5 s until 60 s.
  expect(report.beats).toBe(4 + 1 + 40);
  // Planned anew where the sound device leaps, and nowhere else.
  if (report.strayedMs < leastLeapMs) expect(report.twice).toEqual([]);
  expect(report.leftOut).toEqual([]);
  // What a device loses on a busy machine it has lost before anybody can hear of it, there and back.
  const allowed = 1 + 2 * report.strayedMs;
  expect(report.worstMs).toBeLessThan(allowed);
  expect(Math.abs(report.driftMsPerMinute)).toBeLessThan(allowed);
  expect(report.unevenMs).toBeLessThan(allowed);
  expect(report.heard).toBe(report.beats);
  expect(report.heardOffMs).toBeLessThan(allowed);
});

test("the look-ahead goes on in a hidden window whose own timers sleep", async ({ stage, built }) => {
  const { timer, ticks, longestGapMs, counted } = await inWindow(stage, built, "quiet");
  console.log(
    `hidden for 8 s: ${timer} of 64 timers, ${ticks} ticks, ${longestGapMs.toFixed(0)} ms between at most`,
    `(a thread of its own: ${counted.count}, ${counted.longestGapMs.toFixed(0)} ms)`,
  );
  expect(timer).toBeLessThan(24);
  // A thread's timer that slept too would come once a second, as the page's does.
  expect(ticks).toBeGreaterThan(3 * timer);
  expect(ticks).toBeGreaterThan(0.75 * counted.count);
  expect(longestGapMs - counted.longestGapMs).toBeLessThan(1_000);
});
