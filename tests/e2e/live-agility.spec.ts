import { expect, type Page } from "@playwright/test";
import { expectForEverybody } from "./axe.ts";
import { test } from "./fixture.ts";
import { killApp } from "./kills.ts";
import { countedKeys, goToLive, heatOf, type Keys, laneOf, median, openLive } from "./live.ts";
import { callIn, typeKeys } from "./live-own.ts";
import type { Tapeline } from "./session.ts";

/** The shortest trial that the rules allow; what is checked here does not hang on its length. */
const short = { agility: { crossSize: 914, seconds: 5, touchPenalty: 0.5 } };
const countInMs = 3_000;
const trialMs = 5_000;

const counted = (desk: Page) => desk.getByRole("heading", { name: /^Time!/ });
const start = (desk: Page) => desk.getByRole("button", { name: /^Start the count-in/ });

/** Starts the next trial and lets its time pass; the whistle is on the screen when it should be, and not before. */
async function untilWhistle({ desk, clock }: Tapeline, keys: Keys): Promise<void> {
  await expect(start(desk)).toBeVisible();
  await keys.press("Space");
  await expect(desk.getByText("Get ready")).toBeVisible();
  await clock.pass(countInMs + trialMs - 100);
  await expect(desk.getByText("Seconds left")).toBeVisible();
  await expect(desk.getByRole("timer")).toHaveText("0.1");
  await clock.pass(100);
  await expect(counted(desk)).toBeVisible();
}

async function kindsOf(desk: Page): Promise<string[]> {
  return (await heatOf(desk, "agility")).events.map(({ kind }) => kind);
}

/** Laps, extra quadrants and touches of both directions, and the mean that they come to. */
const jumpers = [
  // 4 × 7 + 3 − 0.5 × 2 = 30 and 4 × 7 + 1 = 29.
  { cw: "732", ccw: "710", mark: "29.5" },
  // 4 × 6 = 24 and 4 × 6 + 2 − 0.5 = 25.5: 24.75.
  { cw: "600", ccw: "621", mark: "24.75" },
  // 4 × 8 + 1 − 0.5 × 3 = 31.5 and 4 × 7 + 2 − 0.5 × 4 = 28: 29.75.
  { cw: "813", ccw: "724", mark: "29.75" },
] as const;

test("a trial takes four keys: the start and a digit each for laps, quadrants and touches", async ({
  tapeline,
}) => {
  const { desk, clock } = tapeline;
  await openLive(desk, "agility", 4, short);
  await clock.hold();
  const perAthlete: number[] = [];
  for (const [index, { cw, ccw, mark }] of jumpers.entries()) {
    const keys = countedKeys(desk);
    if (index % 2 === 0) await callIn(desk, keys, "agility", [index + 1, index + 2]);
    const called = keys.pressed();
    const lane = (index % 2) + 1;
    await expect(desk.getByRole("heading", { name: "Clockwise", exact: true })).toBeVisible();
    await expect(desk.getByRole("img", { name: /the way around: clockwise$/ })).toBeVisible();
    if (index === 0) await expectForEverybody(desk);
    await untilWhistle(tapeline, keys);
    if (index === 0) await expectForEverybody(desk);
    await typeKeys(clock.pass, keys, ...cw);
    await expect(desk.getByRole("heading", { name: "Counter-clockwise" })).toBeVisible();
    await expect(desk.getByRole("img", { name: /the way around: counter-clockwise$/ })).toBeVisible();
    await expect(desk.getByText("Rest since the last trial")).toBeVisible();
    await untilWhistle(tapeline, keys);
    await typeKeys(clock.pass, keys, ...ccw);
    await expect(laneOf(desk, lane)).toContainText(`${mark}landings`);
    perAthlete.push(keys.pressed() - called);
  }
  console.log(
    `agility: median ${median(perAthlete)} keys per athlete (${perAthlete.join(", ")}: in each direction the start, laps, ` +
      `quadrants, touches), and 1 to call two athletes (target 8)`,
  );
  expect(median(perAthlete)).toBeLessThanOrEqual(8);
});

test("tapped landing by landing or counted by eye, the attempt is the same", async ({ tapeline }) => {
  const { desk, clock } = tapeline;
  await openLive(desk, "agility", 1, short);
  await clock.hold();
  const keys = countedKeys(desk);
  await callIn(desk, keys, "agility", [1]);
  await keys.press("Space");
  await clock.pass(countInMs);
  await expect(desk.getByText("Seconds left")).toBeVisible();
  await expectForEverybody(desk);
  for (let landing = 0; landing < 14; landing += 1) await keys.press("Space");
  await keys.press("t");
  await expect(desk.getByText("Landings tapped")).toBeVisible();
  await clock.pass(trialMs);
  await expect(counted(desk)).toHaveText("Time! As you tapped it:");
  // A tap after the whistle is no landing.
  await clock.pass(500);
  await keys.press("Space");
  await expect(desk.getByText("14 landings")).toBeVisible();
  await keys.press("Enter");
  await untilWhistle(tapeline, keys);
  await typeKeys(clock.pass, keys, "3", "2", "1");
  await expect(laneOf(desk, 1)).toContainText("13.5landings");
  const recent = await attemptsOf(desk);
  expect(recent.map(({ seen }) => seen)).toEqual([
    { direction: "ccw", laps: 3, extra: 2, touches: 1 },
    { direction: "cw", laps: 3, extra: 2, touches: 1 },
  ]);
});

interface Told {
  readonly seen: { readonly direction: string };
  readonly void: { readonly reason: string } | null;
}

/** The newest attempts of the station, newest first. */
async function attemptsOf(desk: Page): Promise<Told[]> {
  const input = encodeURIComponent(JSON.stringify({ test: "agility", lengths: "cm" }));
  const answer = await desk.evaluate(
    (sent) => fetch(`/trpc/station.view?input=${sent}`).then((response) => response.json()),
    input,
  );
  return answer.result.data.recent.map(({ attempt }: { attempt: Told }) => attempt);
}

test("a false start and a trial that is run again are kept, with why", async ({ tapeline }) => {
  const { desk, clock } = tapeline;
  await openLive(desk, "agility", 1, short);
  await clock.hold();
  const keys = countedKeys(desk);
  await callIn(desk, keys, "agility", [1]);
  await keys.press("Space");
  await expect(desk.getByText("Get ready")).toBeVisible();
  await keys.press("f");
  await expect(desk.getByText("Clockwise: false start")).toBeVisible();
  await untilWhistle(tapeline, keys);
  // A fourth quadrant is a lap; the wrong digit is gone back to.
  await typeKeys(clock.pass, keys, "7", "5");
  await expect(desk.getByRole("alert")).toContainText("A fourth quadrant makes a full lap");
  await typeKeys(clock.pass, keys, "Backspace", "6", "3");
  await expect(desk.getByText("27 landings")).toBeVisible();
  await keys.press("ArrowUp");
  await keys.press("Enter");
  await expect(desk.getByRole("heading", { name: "Counter-clockwise" })).toBeVisible();

  await keys.press("r");
  const dialog = desk.getByRole("dialog", { name: "Run clockwise again?" });
  await dialog.getByRole("button", { name: /^Cancel it and run it again/ }).click();
  await expect(dialog).toContainText("Write the reason in a few words, or choose one.");
  await expectForEverybody(desk);
  await dialog.getByRole("textbox").fill("Counted for somebody else");
  await keys.press("Enter");
  await expect(desk.getByText("Clockwise: Counted for somebody else")).toBeVisible();
  await expect.poll(async () => (await attemptsOf(desk))[0]?.void?.reason).toBe("Counted for somebody else");
  await expect(desk.getByRole("heading", { name: "Clockwise", exact: true })).toBeVisible();
  expect(await kindsOf(desk)).toEqual(["go", "false-start", "go", "count", "rerun"]);
  // What is taken back stands again.
  await keys.press("Backspace");
  await expect(desk.getByRole("heading", { name: "Counter-clockwise" })).toBeVisible();
});

test("two lanes start together on one signal, and each is counted by itself", async ({
  tapeline: { desk, clock },
}) => {
  await openLive(desk, "agility", 2, short);
  await clock.hold();
  const keys = countedKeys(desk);
  await callIn(desk, keys, "agility", [1, 2]);
  await keys.press("a");
  await expect(desk.getByText("Get ready")).toBeVisible();
  await clock.pass(countInMs + trialMs);
  await expect(counted(desk)).toBeVisible();
  const { events } = await heatOf(desk, "agility");
  const [one, other] = events;
  expect(events).toHaveLength(2);
  expect(one?.atMs).toBe(other?.atMs);
  await typeKeys(clock.pass, keys, "7", "0", "0");
  // It goes on by itself to the lane that is to be counted next, so that digits are counts.
  await expect(counted(desk)).toBeVisible();
  await typeKeys(clock.pass, keys, "6", "0", "1");
  await expect.poll(async () => (await attemptsOf(desk)).length).toBe(2);
  expect((await attemptsOf(desk)).map(({ seen }) => seen)).toEqual([
    { direction: "cw", laps: 6, extra: 0, touches: 1 },
    { direction: "cw", laps: 7, extra: 0, touches: 0 },
  ]);
  // All are counted: the first one's other direction is next, and one key starts both.
  await expect(desk.getByRole("heading", { name: "Counter-clockwise" })).toBeVisible();
  await expect(desk.getByText("Skater 1").last()).toBeVisible();
  await keys.press("a");
  await expect(desk.getByText("Get ready")).toBeVisible();
});

test("a doubtful count is asked about before it is saved, and no digit or Enter says yes", async ({
  tapeline: { desk, clock },
}) => {
  await openLive(desk, "agility", 1, short);
  await clock.hold();
  const keys = countedKeys(desk);
  await callIn(desk, keys, "agility", [1]);
  await keys.press("Space");
  await clock.pass(countInMs + trialMs);
  await expect(counted(desk)).toBeVisible();
  await typeKeys(clock.pass, keys, "0", "0", "0");
  await expect(desk.getByRole("alert")).toContainText("Is this right?");
  await typeKeys(clock.pass, keys, "Enter", "7", "Enter");
  expect(await attemptsOf(desk)).toEqual([]);
  await typeKeys(clock.pass, keys, "Escape", "5", "0", "0");
  await expect.poll(async () => (await attemptsOf(desk)).length).toBe(1);
  expect((await attemptsOf(desk))[0]?.seen).toEqual({ direction: "cw", laps: 5, extra: 0, touches: 0 });
});

test("a trial goes on by the same clock after the program was killed in the middle of it", async ({
  tapeline,
}) => {
  const { clock } = tapeline;
  await openLive(tapeline.desk, "agility", 1, { agility: { ...short.agility, seconds: 30 } });
  await clock.hold();
  const keys = countedKeys(tapeline.desk);
  await callIn(tapeline.desk, keys, "agility", [1]);
  await keys.press("Space");
  await clock.pass(countInMs + 700);
  await expect(tapeline.desk.getByText("Seconds left")).toBeVisible();
  await keys.press("Space");
  await keys.press("Space");
  await keys.press("t");
  await expect.poll(() => kindsOf(tapeline.desk)).toEqual(["go", "landing", "landing", "touch"]);
  await clock.pass(3_000);
  await killApp(tapeline);
  const { desk } = tapeline;
  await goToLive(desk, "agility");
  await expect(desk.getByText("Seconds left")).toBeVisible();
  await expect(desk.getByText("1 line touch")).toBeVisible();
  await expect(desk.getByRole("timer")).toHaveText("26.3");
  await clock.pass(26_200);
  await expect(desk.getByRole("timer")).toHaveText("0.1");
  await clock.pass(100);
  await expect(counted(desk)).toBeVisible();
  // Two landings are few: that is asked about.
  await countedKeys(desk).press("Enter");
  await expect(desk.getByRole("alert")).toContainText("Is this right?");
  await countedKeys(desk).press("y");
  await expect.poll(() => kindsOf(desk)).toEqual(["go", "landing", "landing", "touch", "take"]);
});
