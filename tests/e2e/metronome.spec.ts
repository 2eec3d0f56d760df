import { expect } from "@playwright/test";
import { test } from "./fixture.ts";
import { gridReport } from "./metronome/report.ts";
import { inWindow } from "./metronome/window.ts";

/** The metronome in the real window: its sounds sample by sample, and one minute in real time. */

test("every sound begins on its sample, without a click, where a hall is quiet", async ({ stage }) => {
  const { sounds, takenBack } = await inWindow(stage, "sounds", 50_000);
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
}) => {
  const minute = await inWindow(stage, "minute", 120_000);
  const report = gridReport(minute, 60_000);
  console.log(report.lines.join("\n"));

  expect(minute.state).toBe(minute.device ? "ready" : "none");
  expect(minute.hangs.count).toBeGreaterThan(45);
  expect(minute.hangs.longest).toBeGreaterThanOrEqual(200);
  // It was hidden for 20 s of it, and it was not for all of it.
  expect(minute.hiddenStamps).toBeGreaterThan(15);
  expect(minute.hiddenStamps).toBeLessThan(minute.stamps.length / 2);
  // A count-in of four, the start, and a beat every 1.5 s until 60 s.
  expect(report.beats).toBe(4 + 1 + 40);
  expect(report.twice).toEqual([]);
  expect(report.leftOut).toEqual([]);
  expect(report.worstMs).toBeLessThan(1);
  expect(Math.abs(report.driftMsPerMinute)).toBeLessThan(1);
  expect(report.unevenMs).toBeLessThan(1);
  expect(report.heard).toBe(report.beats);
  expect(report.heardOffMs).toBeLessThan(1);
});

test("the look-ahead goes on in a hidden window whose own timers sleep", async ({ stage }) => {
  const { timer, ticks, longestGapMs } = await inWindow(stage, "quiet", 50_000);
  console.log(
    `hidden for 8 s: ${timer} of 64 timers, ${ticks} ticks, ${longestGapMs.toFixed(0)} ms between at most`,
  );
  expect(timer).toBeLessThan(24);
  expect(ticks).toBeGreaterThan(48);
  expect(longestGapMs).toBeLessThan(1_000);
});
