import { expect } from "@playwright/test";
import { expectForEverybody } from "./axe.ts";
import { test } from "./fixture.ts";
import { killApp, killPage } from "./kills.ts";
import {
  checkClock,
  countedKeys,
  type Eyes,
  gather,
  goToLive,
  heatOf,
  isDone,
  laneOf,
  median,
  openLive,
  type Place,
  setLanes,
  startedAgo,
  startNow,
  until,
} from "./live.ts";
import { scan } from "./live-own.ts";
import { isPutAside } from "./put-aside.ts";
import type { Tapeline } from "./session.ts";

/** When each lane comes down, in ms; marks are rounded down. */
const stops = [3_500, 5_999, 11_000, 13_001, 22_500, 24_500];
const marks = ["0:03", "0:05", "0:11", "0:13", "0:22", "0:24"];

interface Run {
  readonly marks: string[];
  readonly atMs: number[];
  readonly keysPerLane: number[];
  readonly shared: number;
}

/** A heat of six, driven by the keyboard; `disturb` comes after so many stops, and may bring it to another window. */
async function run(
  tapeline: Tapeline,
  disturb: (stopped: number, zero: number, eyes: Eyes) => Promise<Place | undefined>,
): Promise<Run> {
  const { desk, clock } = tapeline;
  let place: Place = { eyes: desk, keys: countedKeys(desk) };
  await gather(desk, place.keys, 6);
  const zero = await startNow(tapeline, place.keys, "core", 3_000);
  const shared = place.keys.pressed();
  const keysPerLane: number[] = [];
  for (const [index, stop] of stops.entries()) {
    const pressed = place.keys.pressed();
    await until(clock, zero + stop);
    await place.keys.press(`${index + 1}`);
    await isDone(place.eyes, index + 1);
    keysPerLane.push(place.keys.pressed() - pressed);
    place = (await disturb(index + 1, zero, place.eyes)) ?? place;
  }
  const told = async () => (await heatOf(place.eyes, "core")).lane.filter(({ told: each }) => each !== null);
  await expect.poll(async () => (await told()).length).toBe(6);
  const { lane, events } = await heatOf(place.eyes, "core");
  return {
    ...{ keysPerLane, shared },
    marks: lane.map(({ told: each }) => each?.written.number ?? ""),
    atMs: events.map(({ atMs }) => atMs),
  };
}

test("six planks, the page and then the program killed in the middle: same clock, no tap lost, same marks", async ({
  tapeline,
}) => {
  await openLive(tapeline.desk, "core", 12);
  await setLanes(tapeline.desk, 6);
  await tapeline.clock.hold();
  const killed = await run(tapeline, async (stopped, zero, eyes) => {
    if (stopped === 1) await checkClock(tapeline, tapeline.desk, "core", zero);
    if (stopped === 2) {
      const window = await killPage(tapeline);
      await isDone(window, 2);
      await checkClock(tapeline, window, "core", zero);
      return { eyes: window, keys: window };
    }
    if (stopped === 4) {
      // A kill in the same breath as a tap may take it along.
      await expect.poll(async () => (await heatOf(eyes, "core")).events.length).toBe(4);
      await killApp(tapeline);
      const { desk } = tapeline;
      await goToLive(desk, "core");
      await isDone(desk, 4);
      await checkClock(tapeline, desk, "core", zero);
      return { eyes: desk, keys: countedKeys(desk) };
    }
    return undefined;
  });
  // The six who have not been at it yet, undisturbed.
  const undisturbed = await run(tapeline, async () => undefined);

  const each = median(killed.keysPerLane);
  console.log(`core: median ${each} keys per athlete (target 1), and ${killed.shared} for the whole heat`);
  expect(killed.marks).toEqual(marks);
  expect(undisturbed.marks).toEqual(killed.marks);
  expect(killed.atMs).toEqual(stops);
  expect(undisturbed.atMs).toEqual(stops);
  expect(each).toBeLessThanOrEqual(1);
});

test("a heat that the program was killed in before anybody came down asks nobody who they are, and the first key stops", async ({
  tapeline,
}) => {
  await openLive(tapeline.desk, "core", 2);
  await tapeline.clock.hold();
  const keys = countedKeys(tapeline.desk);
  await gather(tapeline.desk, keys, 2);
  const zero = await startNow(tapeline, keys, "core", 3_000);
  // What the page noted is gone with the program.
  await killApp(tapeline);
  const { desk } = tapeline;
  await goToLive(desk, "core");
  await until(tapeline.clock, zero + 20_000);
  await desk.keyboard.press("1");
  await isDone(desk, 1);
  expect((await heatOf(desk, "core")).events.map(({ atMs, by }) => [atMs, by])).toEqual([[20_000, "QA"]]);
});

test("the next stage is announced before it comes, and there is a second round", async ({
  tapeline: { desk, clock },
}) => {
  await openLive(desk, "core", 2);
  await clock.hold();
  const keys = countedKeys(desk);
  await gather(desk, keys, 2);
  await expectForEverybody(desk);
  await startedAgo(desk, "core", 54);
  const stage = desk.locator('[data-kind="now"]');
  const next = desk.locator('[data-kind="next"]');
  await expect(stage).toContainText("both feet down");
  await expect(next).toContainText("Next, in 6 s");
  await expect(next).toContainText("one foot up");
  await expect(next).toHaveAttribute("data-near", "false");
  await clock.pass(3_000);
  await expect(next).toContainText("Next, in 3 s");
  await expect(next).toHaveAttribute("data-near", "true");
  await clock.pass(2_999);
  await expect(next).toContainText("Next, in 1 s");
  await expect(stage).toContainText("both feet down");
  await clock.pass(1);
  await expect(stage).toContainText("one foot up");
  await expect(desk.getByRole("timer")).toHaveText("1:00");
  await keys.press("1");
  await expect(laneOf(desk, 1)).toContainText("1:00one foot up");
  await expectForEverybody(desk);
  await keys.press("2");
  await expect(laneOf(desk, 2)).toContainText("First result");
  await expectForEverybody(desk);
});

test("round two is held, shown and written", async ({ tapeline: { desk, clock } }) => {
  await openLive(desk, "core", 1);
  await clock.hold();
  const keys = countedKeys(desk);
  await gather(desk, keys, 1);
  await startedAgo(desk, "core", 237);
  await expect(desk.locator('[data-kind="now"]')).toContainText("other arm and leg");
  await clock.pass(3_000);
  await expect(desk.locator('[data-kind="now"]')).toContainText("round 2, both feet down");
  await keys.press("1");
  await expect(laneOf(desk, 1)).toContainText("4:00round 2, both feet down");
});

test("a stop is taken back within ten seconds; later it is corrected with a reason", async ({
  tapeline: { desk, clock },
}) => {
  await openLive(desk, "core", 2);
  await clock.hold();
  const keys = countedKeys(desk);
  await gather(desk, keys, 2);
  await startedAgo(desk, "core", 30);
  await keys.press("1");
  await expect(laneOf(desk, 1)).toHaveAttribute("data-phase", "done");
  await keys.press("Backspace");
  await expect(laneOf(desk, 1)).toHaveAttribute("data-phase", "going");
  await keys.press("2");
  await expect(laneOf(desk, 2)).toContainText("First result");
  const undo = desk.getByRole("button", { name: /^Undo/ });
  await clock.pass(9_900);
  await expect(undo).toBeVisible();
  await clock.pass(200);
  await expect(undo).toBeHidden();
  await keys.press("Backspace");
  await expect(laneOf(desk, 2)).toHaveAttribute("data-phase", "done");
  await laneOf(desk, 2).getByRole("button", { name: "Correct this result: bib 2" }).click();
  const dialog = desk.getByRole("dialog", { name: "Correct bib 2, Skater 2" });
  await dialog.getByRole("textbox", { name: /^Time/ }).fill("0:25");
  await dialog.getByRole("textbox", { name: "Reason" }).fill("Was down before");
  await dialog.getByRole("button", { name: /^Save the correction/ }).click();
  await expect(dialog).toBeHidden();
  await expect(laneOf(desk, 2)).toContainText("0:25");
  // The clock of the other lane did not care.
  const { events } = await heatOf(desk, "core");
  expect(events.map(({ kind }) => kind)).toEqual(["stop", "undo", "stop"]);
});

test("a tap that nobody answers is kept through a crash of the page, with its own time", async ({
  tapeline,
}) => {
  const { desk, clock } = tapeline;
  await openLive(desk, "core", 2);
  await clock.hold();
  const keys = countedKeys(desk);
  await gather(desk, keys, 2);
  await startedAgo(desk, "core", 20);
  await expect(desk.getByRole("timer")).toHaveText("0:20");
  await desk.evaluate(() => {
    const send = globalThis.fetch;
    let asked = 0;
    // The first try fails, and no later one is ever answered.
    const unanswered = () =>
      asked++ === 0 ? Promise.reject(new TypeError("Failed to fetch")) : new Promise<Response>(() => {});
    globalThis.fetch = (input, init) => {
      const url = String(input instanceof Request ? input.url : input);
      return url.includes("heat.tap") ? unanswered() : send(input, init);
    };
  });
  await clock.pass(1_234);
  await keys.press("2");
  await expect(laneOf(desk, 2)).toHaveAttribute("data-phase", "done");
  await expect(desk.getByText(/1 tap is not saved yet/)).toBeVisible();
  expect((await heatOf(desk, "core")).events).toEqual([]);
  await isPutAside(tapeline, '"atMs":21234');
  await clock.pass(5_000);
  const shown = await killPage(tapeline);
  const events = async () => (await heatOf(shown, "core")).events;
  await expect.poll(async () => (await events()).length).toBe(1);
  await isDone(shown, 2);
  expect((await events())[0]?.atMs).toBe(21_234);
});

test("a scanner never stops a lane, whatever has the focus", async ({ tapeline: { desk } }) => {
  await openLive(desk, "core", 3);
  await setLanes(desk, 3);
  await scan(desk, "3");
  const initials = desk.getByRole("dialog").getByRole("textbox");
  await initials.fill("QA");
  await initials.press("Enter");
  await expect(desk.getByRole("button", { name: /^Start 1 lane/ })).toBeVisible();
  await scan(desk, "1");
  await expect(desk.getByRole("button", { name: /^Start 2 lanes/ })).toBeVisible();
  await startedAgo(desk, "core", 20);
  await expect(laneOf(desk, 1)).toHaveAttribute("data-phase", "going");
  // Each is asked a place for, as a bib: nobody has the one, and there is no place for the other.
  for (const [bib, refused] of [
    ["12", 404],
    ["2", 409],
  ] as const) {
    const answered = desk.waitForResponse(/heat\.place/);
    await scan(desk, bib);
    expect((await answered).status()).toBe(refused);
  }
  await expect(desk.getByText("so its lanes can't be changed")).toBeVisible();
  for (const lane of [1, 2]) await expect(laneOf(desk, lane)).toHaveAttribute("data-phase", "going");
  expect((await heatOf(desk, "core")).events).toEqual([]);
});
