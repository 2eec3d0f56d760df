import fc from "fast-check";
import { expect, test } from "vitest";
import { createScheduler, lookAheadMs } from "../../../renderer/sound/schedule.ts";
import { nextSpan } from "../../../renderer/sound/span.ts";
import { createRig, cuesUntil, pushUps, type Rig } from "./rig.ts";

/** Tops up at gaps of any kind up to the length of the look-ahead, as a page does that hangs now and then. */
const gaps = fc.array(
  fc.oneof(fc.double({ min: 0, max: 250, noNaN: true }), fc.double({ min: 0, max: 2_240, noNaN: true })),
  { minLength: 5, maxLength: 200 },
);

test("spans follow each other without gap or overlap, whatever the gaps between the asking", () => {
  fc.assert(
    fc.property(fc.double({ min: -10_000, max: 10_000, noNaN: true }), gaps, (start, between) => {
      let elapsed = start;
      let covered: number | null = null;
      for (const gap of between) {
        elapsed += gap;
        const span = nextSpan(covered, elapsed, lookAheadMs, 250);
        if (span === null) continue;
        expect(span.from).toBe(covered ?? elapsed - 250);
        expect(span.until).toBe(elapsed + lookAheadMs);
        covered = span.until;
      }
    }),
  );
});

test("nothing new has come into reach when no time has passed", () => {
  expect(nextSpan(2_500, 0, 2_500, 250)).toBeNull();
  expect(nextSpan(3_000, 0, 2_500, 250)).toBeNull();
});

test("every beat is scheduled once, ahead and exactly on the grid, with any jitter of the timer", () => {
  fc.assert(
    fc.property(gaps, (between) => {
      const rig = createRig();
      const scheduler = createScheduler({
        ...{ clock: rig.clock, timeline: pushUps, output: rig.output },
        onScheduled: (scheduled) => rig.scheduled.push(scheduled),
      });
      scheduler.topUp();
      for (const gap of between) {
        rig.now += gap;
        scheduler.topUp();
      }
      const ideal = cuesUntil(rig.now - 10_000 + lookAheadMs);
      expect(heardOf(rig)).toEqual(ideal.map(({ cue, atMs }) => ({ cue, atMs })));
      expect(rig.scheduled.filter(({ lateMs }) => lateMs > 0)).toEqual([]);
      expect(rig.scheduled.map(({ when }) => when)).toEqual(rig.heard.map(({ when }) => when));
    }),
  );
});

test("planning anew at any moment neither doubles nor loses a beat", () => {
  const acts = fc.array(fc.tuple(fc.double({ min: 0, max: 400, noNaN: true }), fc.boolean()), {
    minLength: 5,
    maxLength: 120,
  });
  fc.assert(
    fc.property(acts, (list) => {
      const rig = createRig();
      const scheduler = createScheduler({ clock: rig.clock, timeline: pushUps, output: rig.output });
      scheduler.topUp();
      for (const [gap, again] of list) {
        rig.now += gap;
        if (again) scheduler.replan(pushUps);
        scheduler.topUp();
      }
      const ideal = cuesUntil(rig.now - 10_000 + lookAheadMs);
      expect(heardOf(rig)).toEqual(ideal.map(({ cue, atMs }) => ({ cue, atMs })));
    }),
  );
});

test("when the clocks leap, what has not begun moves with them and what has begun is not repeated", () => {
  const rig = createRig();
  const scheduler = createScheduler({ clock: rig.clock, timeline: pushUps, output: rig.output });
  run(rig, scheduler.topUp, 13_050);
  // The card stands still for 300 ms: the page's clock goes on alone.
  rig.now += 300;
  rig.cardZero += 300;
  rig.leaps += 1;
  run(rig, scheduler.topUp, 15_000);
  const whens = rig.heard.map(({ when }) => Math.round(when * 1000));
  // Until 13,000 ms of the page's clock by the first offset; from 14,500 on by the new one.
  expect(whens.filter((when) => when <= 10_000)).toEqual([1_000, 2_500, 4_000, 5_500, 7_000, 8_500, 10_000]);
  expect(whens.slice(7)).toEqual([11_200, 12_700]);
});

test("a heat that starts anew takes the old start's beats back", () => {
  const rig = createRig();
  const scheduler = createScheduler({ clock: rig.clock, timeline: pushUps, output: rig.output });
  run(rig, scheduler.topUp, 10_100);
  rig.clock.settle({ zeroAt: 16_000, doubtMs: 0 });
  run(rig, scheduler.topUp, 11_000);
  const later = rig.heard.filter(({ when }) => when > 7.1);
  expect(later.map(({ cue, when }) => [cue, Math.round(when * 1000)])).toEqual([
    ["count-in", 8_500],
    ["count-in", 10_000],
  ]);
});

test("stopping takes back all that has not begun and lets the rest ring out", () => {
  const rig = createRig();
  const scheduler = createScheduler({ clock: rig.clock, timeline: pushUps, output: rig.output });
  run(rig, scheduler.topUp, 11_600);
  scheduler.stop();
  run(rig, scheduler.topUp, 20_000);
  expect(rig.heard.map(({ when }) => Math.round(when * 1000))).toEqual([
    1_000, 2_500, 4_000, 5_500, 7_000, 8_500,
  ]);
});

test("sound that wakes in the middle of a heat goes on with the next beat", () => {
  const rig = createRig();
  rig.awake = false;
  const scheduler = createScheduler({ clock: rig.clock, timeline: pushUps, output: rig.output });
  run(rig, scheduler.topUp, 12_000);
  expect(rig.heard).toEqual([]);
  rig.awake = true;
  scheduler.topUp();
  expect(heardOf(rig)).toEqual(
    [
      { cue: "top", atMs: 3_000 },
      { cue: "bottom", atMs: 4_500 },
    ].filter(({ atMs }) => atMs < 2_000 + lookAheadMs),
  );
});

test("after a hang of many seconds beats that have gone by are left out, and told as such", () => {
  const rig = createRig();
  const scheduler = createScheduler({
    ...{ clock: rig.clock, timeline: pushUps, output: rig.output },
    onScheduled: (scheduled) => rig.scheduled.push(scheduled),
  });
  run(rig, scheduler.topUp, 10_000);
  rig.now = 16_050;
  scheduler.topUp();
  const after = rig.scheduled.filter(({ atMs }) => atMs > 1_500);
  expect(after.map(({ atMs, when, lateMs }) => [atMs, when !== null, Math.round(lateMs)])).toEqual([
    [3_000, false, 3_050],
    [4_500, false, 1_550],
    [6_000, true, 50],
    [7_500, true, 0],
  ]);
});

test("the end of a heat is told even when it comes a little late", () => {
  const rig = createRig();
  const end = { atMs: 0, cue: "end" } as const;
  const scheduler = createScheduler({
    ...{ clock: rig.clock, output: rig.output },
    timeline: (from, until) => (from <= 0 && 0 < until ? [end] : []),
  });
  rig.now = 10_200;
  scheduler.topUp();
  scheduler.topUp();
  expect(rig.heard).toEqual([{ cue: "end", when: 7.2 }]);
});

/** Tops up every 125 ms until `until`, in ms of the page's clock. */
function run(rig: Rig, topUp: () => void, until: number): void {
  while (rig.now < until) {
    topUp();
    rig.now = Math.min(until, rig.now + 125);
  }
  topUp();
}

/** What was played, by the heat's own times. */
function heardOf(rig: Rig): { cue: string; atMs: number }[] {
  return rig.heard.map(({ cue, when }) => ({
    cue,
    atMs: Math.round(when * 1000 + rig.cardZero - 10_000),
  }));
}
