import { join } from "node:path";
import { expect, type Page } from "@playwright/test";
import { testCodes } from "../../electron/domain/tests/registry.ts";
import { boardDay } from "../door/board-day.ts";
import { crowdedDay } from "../door/crowd.ts";
import { reps, trial } from "../door/station-day.ts";
import { expectForEverybody } from "./axe.ts";
import { faultsOf, resize, type Size } from "./board-picture.ts";
import { test } from "./fixture.ts";
import { callDoor } from "./page.ts";
import { faintTexts, listenTo, movingOn } from "./readable.ts";
import type { Tapeline } from "./session.ts";
import { keyFromPaper } from "./stations.ts";

/** A television, a large one, and an old projector. */
const walls: readonly Size[] = [
  { width: 1920, height: 1080 },
  { width: 3840, height: 2160 },
  { width: 1024, height: 768 },
];

async function threeLongNames(desk: Page): Promise<void> {
  await callDoor(desk, "day.create", {
    sure: true,
    date: "2026-03-14",
    title: "The spring testing day of the Upper Quarry",
  });
  await callDoor(desk, "day.open", { sure: true });
  for (const bib of [1, 2, 3]) {
    const name = `Wilhelmina Featherstone the ${["First", "Second", "Third"][bib - 1]} of the Upper Quarry`;
    const who = { league: "Everlasting Overlap Rollers", name, number: `${bib}`, birthYear: 1995, bib };
    const agreed = { leaveOut: [], board: "name", share: true, guardianConsent: false, by: "QA" };
    const { athleteId } = (await callDoor(desk, "checkIn.walkUp", { ...who, ...agreed })) as {
      athleteId: number;
    };
    await callDoor(desk, "station.callAthlete", { athleteId, test: "push-up" });
  }
}

async function expectOnEveryWall(board: Page, who: string): Promise<void> {
  for (const size of walls) {
    await resize(board, size);
    await board.waitForFunction(() => document.documentElement.dataset.ready === "true");
    const at = `${who}, ${size.width} × ${size.height}`;
    expect.soft(await faultsOf(board), at).toEqual([]);
    const { faint, looked } = await faintTexts(board, 7);
    expect.soft(faint, at).toEqual([]);
    expect(looked).toBeGreaterThan(4);
  }
}

test("the board without a day, with nobody and with three long names is read on every wall", async ({
  tapeline,
}) => {
  const { desk } = tapeline;
  const board = await tapeline.openBoard();
  await expectOnEveryWall(board, "no day");
  await threeLongNames(desk);
  await expect(board.getByRole("heading", { level: 1 })).toContainText("Upper Quarry");
  await expectOnEveryWall(board, "three");
  await tapeline.clock.hold();
  await board.reload();
  await expect(board.getByRole("heading", { level: 1 })).toBeVisible();
  await tapeline.clock.pass(15_000);
  await expect(board.getByRole("region", { name: "Calls and totals" })).toBeVisible();
  await expectOnEveryWall(board, "three, calls");
});

test("a busy board is read at 7 : 1, wanders without leaving the wall, moves nothing for who wants no motion, and says nothing unasked", async ({
  tapeline,
}) => {
  await tapeline.restart(async () => {
    (await crowdedDay(40, join(tapeline.folder, "tapeline.sqlite"))).desk.close();
  });
  const board = await tapeline.openBoard();
  await board.emulateMedia({ reducedMotion: "reduce" });
  await tapeline.clock.hold();
  await resize(board, { width: 1024, height: 768 });
  await board.reload();
  await expect(board.getByRole("heading", { level: 1 })).toBeVisible();
  const heard = await listenTo(board);
  for (let scene = 0; scene < 5; scene += 1) {
    expect.soft((await faintTexts(board, 7)).faint, `scene ${scene}`).toEqual([]);
    expect.soft(await faultsOf(board), `scene ${scene}`).toEqual([]);
    expect.soft(await movingOn(board), `scene ${scene}`).toEqual([]);
    await tapeline.clock.pass(15_000);
  }
  // Scenes come and go; only a new best is news.
  expect(await heard.said()).toEqual([]);
  await board.emulateMedia({ reducedMotion: "no-preference" });
  // The measure sees motion where there is some.
  expect(await movingOn(board)).not.toEqual([]);
  expect(await driftOf(tapeline, board)).toEqual({ places: 6, furthest: expect.any(Number), outside: 0 });
});

/** Where the whole picture stands in the twelve minutes of its drift, and how often a text is over the edge there. */
async function driftOf({ clock }: Tapeline, board: Page) {
  const seen = new Set<string>();
  let [furthest, outside] = [0, 0];
  for (let place = 0; place < 6; place += 1) {
    const now = await placeOf(board);
    seen.add(now.at);
    furthest = Math.max(furthest, now.furthest);
    outside += now.outside;
    await clock.pass(120_000);
  }
  return { places: seen.size, furthest, outside };
}

/** Where the picture stands now, and how many of its texts are over the edge. */
function placeOf(board: Page) {
  return board.evaluate(() => {
    const sheet = document.querySelector("[data-drift]");
    if (sheet === null) throw new Error("The picture does not drift.");
    const { x, y } = sheet.getBoundingClientRect();
    const outside = [...sheet.querySelectorAll("strong, h1, h2, p, li span")].filter((text) => {
      const { left, right, top, bottom } = text.getBoundingClientRect();
      return left < 0 || top < 0 || right > innerWidth + 1 || bottom > innerHeight + 1;
    });
    return { at: `${x} ${y}`, furthest: Math.max(Math.abs(x), Math.abs(y)), outside: outside.length };
  });
}

test("the hidden board is as dark as off, and says what it is", async ({ tapeline }) => {
  const board = await tapeline.openBoard();
  await callDoor(tapeline.desk, "board.hide", { hidden: true });
  const dark = board.getByRole("img", { name: "The big screen is hidden" });
  await expect(dark).toBeVisible();
  expect(await dark.evaluate((element) => getComputedStyle(element).backgroundColor)).toBe("rgb(0, 0, 0)");
  expect(await board.evaluate(() => document.body.textContent?.trim())).toBe("");
  // The rules of axe that have something to look at: its name, its language, its title.
  await expectForEverybody(board, 2);
});

test("a long gain and its words stay beside the other bests on every wall", async ({ tapeline }) => {
  await tapeline.restart(async () => {
    // So many that the list beside the newest one is full.
    const people = Array.from({ length: 7 }, (_none, index) => {
      return { league: "Quarry Lane", name: `Ember ${index}`, number: `${index}`, board: "name" } as const;
    });
    const day = await boardDay(people, join(tapeline.folder, "tapeline.sqlite"));
    for (let bib = 1; bib <= people.length; bib += 1) {
      day.past(bib, "agility", 97);
      await day.enter(bib, "push-up", reps(20));
      await day.enter(bib, "agility", trial("cw", 7, bib % 4), trial("ccw", 7, 2));
    }
    day.desk.close();
  });
  const board = await tapeline.openBoard();
  await expect(board.getByRole("article")).toContainText("+6.25");
  await expectOnEveryWall(board, "long words");
});

test("a station's numerals are read at 7 : 1, and nothing moves for who wants no motion", async ({
  tapeline: { desk },
}) => {
  await callDoor(desk, "day.openDemo");
  await desk.emulateMedia({ reducedMotion: "reduce" });
  await desk.reload();
  for (const code of testCodes) {
    await desk.evaluate((hash) => {
      location.hash = hash;
    }, `/station/${code}`);
    await keyFromPaper(desk);
    const waiting = desk.getByRole("region", { name: /Waiting here/ }).getByRole("listitem");
    await waiting.first().getByRole("button").first().click();
    await expect(desk.getByRole("button", { name: /^Save the result/ })).toBeVisible();
    const { faint, looked } = await faintTexts(desk, 7, 22);
    expect.soft(faint, code).toEqual([]);
    expect(looked).toBeGreaterThan(2);
    expect.soft(await movingOn(desk), code).toEqual([]);
  }
});

/** The strip of floor tape is what comes next, and next comes one thing. */
test("no screen has two next steps", async ({ tapeline: { desk } }) => {
  await callDoor(desk, "day.openDemo");
  await desk.reload();
  const screens = [
    "day",
    "sheets",
    "rehearsal",
    "plan",
    "check-in",
    "athletes",
    "bundle",
    "noise",
    "study",
    "summary",
    "cards",
  ];
  const stations = testCodes.map((code) => `station/${code}`);
  for (const path of ["", "instructions", ...screens, ...stations]) {
    await desk.evaluate((hash) => {
      location.hash = hash;
    }, `/${path}`);
    await expect(desk.locator("main h1").filter({ visible: true }).first()).toBeVisible();
    await desk.waitForFunction(() => document.querySelector('[aria-busy="true"]') === null);
    const strips = await desk.locator('[data-kind="primary"]').filter({ visible: true }).allTextContents();
    expect.soft(strips.length, `${path}: ${strips.join(", ")}`).toBeLessThan(2);
  }
});

test("a running plank tells its stages and no seconds, and moves nothing for who wants no motion", async ({
  tapeline: { desk, clock },
}) => {
  await callDoor(desk, "day.openDemo");
  await desk.emulateMedia({ reducedMotion: "reduce" });
  await desk.evaluate(() => {
    location.hash = "/station/core";
  });
  await desk.reload();
  await desk.getByRole("button", { name: /^Call the next/ }).click();
  await desk.getByRole("dialog").getByRole("textbox").fill("QA");
  await desk.keyboard.press("Enter");
  await desk.getByRole("button", { name: /^Start \d/ }).waitFor();
  const { result } = await desk.evaluate(() =>
    fetch(`/trpc/heat.view?input=${encodeURIComponent('{"test":"core"}')}`).then((answer) => answer.json()),
  );
  const { heatId } = result.data.heat;
  await clock.hold();
  await callDoor(desk, "heat.start", { heatId, startedAgoMs: 25_000 });
  const shown = desk.getByRole("timer").first();
  await expect(shown).toHaveText("0:22");
  const heard = await listenTo(desk);
  await clock.pass(1_000);
  await expect(shown).toHaveText("0:23");
  await clock.pass(1_000);
  await expect(shown).toHaveText("0:24");
  expect(await heard.said()).toEqual([]);
  expect(await movingOn(desk)).toEqual([]);
  const { faint, looked } = await faintTexts(desk, 7, 22);
  expect(faint).toEqual([]);
  expect(looked).toBeGreaterThan(5);
  await expectForEverybody(desk);
});
