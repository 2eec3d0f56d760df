import { expect, type Page } from "@playwright/test";
import { expectForEverybody } from "./axe.ts";
import { test } from "./fixture.ts";
import {
  countedKeys,
  gather,
  heatOf,
  type Keys,
  laneOf,
  median,
  openLive,
  setLanes,
  startNow,
  until,
} from "./live.ts";
import { callDoor } from "./page.ts";
import type { Tapeline } from "./session.ts";

/** 120 beats a minute, two a rep: a cadence a second. */
const quick = { "push-up": { bpm: 120, beatsPerRep: 2, missesToStop: 3 } };
const repMs = 1_000;
const countInMs = 4 * 500;

/** A press in the middle of the time in which it means the cadence `n`: from a quarter before its beat to three after. */
function timeOf(zero: number, cadence: number): number {
  return zero + cadence * repMs + 0.25 * repMs;
}

/** Stops the clocks, gathers and starts; when the heat is at 0, by the session's clock. */
async function start(tapeline: Tapeline, keys: Keys, lanes: number): Promise<number> {
  await tapeline.clock.hold();
  await gather(tapeline.desk, keys, lanes);
  return startNow(tapeline, keys, "push-up", countInMs);
}

async function marksOf(desk: Page): Promise<string[]> {
  return (await heatOf(desk, "push-up")).lane.map(({ told }) => told?.written.number ?? "");
}

interface Press {
  /** Of the cadence that is meant. */
  readonly at: number;
  readonly lane: number;
  readonly stops?: true;
}

/** What each lane does: "x" off, and stopped after its last cadence unless three off have ended it. */
const cadences = ["...x.....", "..xxx", ".........", ".xx.....", "......xxx", "x..x...x."];
const expected = [9, 2, 9, 8, 6, 9];

const presses: readonly Press[] = cadences
  .flatMap((signs, index) => {
    const lane = index + 1;
    const off = [...signs].flatMap((sign, at): Press[] => (sign === "x" ? [{ at: at + 1, lane }] : []));
    // In the second half of the rep after: the last one was done, and a stop asks nothing.
    return signs.endsWith("xxx") ? off : [...off, { at: signs.length, lane, stops: true } as const];
  })
  .toSorted((a, b) => a.at - b.at || Number(a.stops ?? false) - Number(b.stops ?? false));

test("six lanes on one beat: what is off is tapped, three in a row end a lane, the others stop", async ({
  tapeline,
}) => {
  const { desk, clock } = tapeline;
  await openLive(desk, "push-up", 6, quick);
  await setLanes(desk, 6);
  const keys = countedKeys(desk);
  const zero = await start(tapeline, keys, 6);
  const shared = keys.pressed();
  const perLane = new Map<number, number>();
  for (const { at, lane, stops } of presses) {
    await until(clock, timeOf(zero, at) + (stops ? repMs / 2 : 0));
    await keys.press(stops ? `Shift+Digit${lane}` : `Digit${lane}`);
    perLane.set(lane, (perLane.get(lane) ?? 0) + 1);
  }
  await expect(desk.getByRole("button", { name: /^Finish this heat/ })).toBeVisible();
  expect(await marksOf(desk)).toEqual(expected.map(String));
  const { events } = await heatOf(desk, "push-up");
  for (const [index, signs] of cadences.entries()) {
    const off = events.filter(({ lane, kind }) => lane === index + 1 && kind === "off");
    const wanted = [...signs].flatMap((sign, at) => (sign === "x" ? [at + 1] : []));
    expect(off.map(({ detail }) => (detail as { cadence: number }).cadence)).toEqual(wanted);
  }
  // Each of the whole heat's keys counts for everybody: the most that one can say against the screen.
  const besides = cadences.map((signs, index) => {
    const off = [...signs].filter((sign) => sign === "x").length;
    return (perLane.get(index + 1) ?? 0) + shared - off;
  });
  console.log(`push-up: median ${median(besides)} keys per athlete beside the off cadences (target 3)`);
  expect(median(besides)).toBeLessThanOrEqual(3);
  await expectForEverybody(desk);
  await desk.keyboard.press("n");
  await expect(desk.getByText("Nobody is waiting.")).toBeVisible();
});

test("two in a row warn by word, shape and tape; a second tap takes the mark off again; undo gives a lane back", async ({
  tapeline,
}) => {
  const { desk, clock } = tapeline;
  await openLive(desk, "push-up", 2, quick);
  const keys = countedKeys(desk);
  const zero = await start(tapeline, keys, 2);
  await until(clock, timeOf(zero, 1));
  await expect(desk.getByText("Tap a lane now to mark rep 1 as missed.")).toBeVisible();
  // On again within the same cadence; a finger that trembles is one tap.
  const pressAt = async (key: string, at: number) => {
    await until(clock, at);
    await keys.press(key);
  };
  await pressAt("2", timeOf(zero, 1));
  await pressAt("2", timeOf(zero, 1) + 20);
  await pressAt("2", timeOf(zero, 1) + 200);
  // One is said as one.
  await expect(laneOf(desk, 2)).toContainText(/Skater 2\s*1 rep(?!s)/);
  await pressAt("1", timeOf(zero, 2));
  await pressAt("1", timeOf(zero, 3));
  await expect(laneOf(desk, 1)).toHaveAttribute("data-warning", "true");
  await expect(laneOf(desk, 1)).toContainText("2 in a row: next ends it");
  await expect(desk.getByRole("status").filter({ hasText: "Lane 1: 2 missed in a row" })).toBeAttached();
  await expect(laneOf(desk, 2)).toHaveAttribute("data-warning", "false");
  await pressAt("1", timeOf(zero, 4));
  await expect(laneOf(desk, 1)).toHaveAttribute("data-phase", "done");
  await keys.press("Backspace");
  await expect(laneOf(desk, 1)).toHaveAttribute("data-phase", "going");
  await pressAt("Shift+Digit1", timeOf(zero, 6) + repMs / 2);
  await pressAt("Shift+Digit2", timeOf(zero, 6) + repMs / 2 + 20);
  await expect.poll(() => marksOf(desk)).toEqual(["6", "6"]);
  const { lane, events } = await heatOf(desk, "push-up");
  expect(events.map(({ kind }) => kind)).toEqual([
    "off",
    "on-again",
    "off",
    "off",
    "off",
    "undo",
    "stop",
    "stop",
  ]);
  expect(lane.map(({ entered }) => entered.filter(({ attempt }) => attempt.void === null).length)).toEqual([
    1, 1,
  ]);
});

test("a stop with the beat asks whether that rep was done: the lower stands, one key or one finger says otherwise", async ({
  tapeline,
}) => {
  const { desk, clock } = tapeline;
  await openLive(desk, "push-up", 4, quick);
  await setLanes(desk, 3);
  const keys = countedKeys(desk);
  const zero = await start(tapeline, keys, 3);
  await until(clock, timeOf(zero, 5));
  for (const lane of [1, 2, 3]) await keys.press(`Shift+Digit${lane}`);
  await expect(laneOf(desk, 2)).toContainText("Was rep 5 done?");
  await expect.poll(() => marksOf(desk)).toEqual(["4", "4", "4"]);
  await expectForEverybody(desk);
  // The stop's own key again says no; the key on the screen counts it where the last one stopped, a finger anywhere.
  await until(clock, timeOf(zero, 6));
  await keys.press("Shift+Digit1");
  await keys.press("m");
  await expect.poll(() => marksOf(desk)).toEqual(["4", "4", "5"]);
  await expect(laneOf(desk, 1)).not.toContainText("Was rep");
  await laneOf(desk, 2)
    .getByRole("button", { name: /^Rep 5 was done/ })
    .click();
  await expect.poll(() => marksOf(desk)).toEqual(["4", "5", "5"]);
  await expect(desk.getByText("Was rep 5 done?")).toHaveCount(0);
});

test("a false start is called off with a reason and run again with the same lanes; knees are their own mark", async ({
  tapeline,
}) => {
  const { desk, clock } = tapeline;
  await openLive(desk, "push-up", 3, quick);
  await clock.hold();
  const keys = countedKeys(desk);
  await gather(desk, keys, 3);
  await expectForEverybody(desk);
  await desk.getByRole("button", { name: /^Bib 2: Full/ }).click();
  await expect(desk.getByRole("button", { name: /^Bib 2: On the knees/ })).toBeVisible();
  // Lane 3 is opened by its key, and whoever is in it goes to the first lane.
  await keys.press("Shift+Digit3");
  await expect(desk.getByRole("button", { name: /^Send back/ })).toBeVisible();
  await keys.press("1");
  await expect
    .poll(async () => (await heatOf(desk, "push-up")).lane.map(({ who }) => who.bib))
    .toEqual([3, 2, 1]);
  await startNow(tapeline, keys, "push-up", countInMs);
  await expect(laneOf(desk, 1)).toHaveAttribute("data-phase", "going");
  await keys.press("x");
  const dialog = desk.getByRole("dialog", { name: "End this heat?" });
  await expectForEverybody(desk);
  await dialog.getByRole("button", { name: "Cancel it and run it again" }).click();
  await expect(dialog.getByText("Give the reason first, in a few words.")).toBeVisible();
  await dialog.getByRole("textbox").fill("Lane 2 began early");
  await dialog.getByRole("button", { name: "Cancel it and run it again" }).click();
  await expect(desk.getByRole("button", { name: /^Start 3 lanes/ })).toBeVisible();
  await expect(desk.getByRole("button", { name: /^Bib 2: On the knees/ })).toBeVisible();
  const zero = await startNow(tapeline, keys, "push-up", countInMs);
  await until(clock, timeOf(zero, 3) + repMs / 2);
  for (const lane of [1, 2, 3]) await keys.press(`Shift+Digit${lane}`);
  await expect.poll(() => marksOf(desk)).toEqual(["3", "3", "3"]);
  expect((await heatOf(desk, "push-up")).lane.map(({ variant }) => variant)).toEqual([
    "full",
    "knee",
    "full",
  ]);
});

test("the display stays awake from the opening of the day to its closing, whatever its heats do", async ({
  tapeline,
}) => {
  const { desk, app, clock } = tapeline;
  // Ids are given in order, and nothing else of the app holds the display.
  const held = () =>
    app.evaluate(({ powerSaveBlocker }) => [0, 1, 2, 3].some((id) => powerSaveBlocker.isStarted(id)));
  expect(await held()).toBe(false);
  await openLive(desk, "push-up", 1, quick);
  await expect.poll(held).toBe(true);
  const keys = countedKeys(desk);
  const zero = await start(tapeline, keys, 1);
  await until(clock, timeOf(zero, 1));
  await keys.press("Shift+Digit1");
  await expect(desk.getByRole("button", { name: /^Finish this heat/ })).toBeVisible();
  await keys.press("n");
  await expect(desk.getByRole("button", { name: /^Finish this heat/ })).toBeHidden();
  expect(await held()).toBe(true);
  await callDoor(desk, "day.close", { dayId: 1 });
  await expect.poll(held).toBe(false);
});
