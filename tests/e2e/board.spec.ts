import { join } from "node:path";
import { expect, type Page } from "@playwright/test";
import { type BoardDay, boardDay } from "../door/board-day.ts";
import { crowdedDay } from "../door/crowd.ts";
import type { Invented } from "../door/people-of-a-day.ts";
import { ticket, trial } from "../door/station-day.ts";
import { faultsOf, resize } from "./board-picture.ts";
import { test } from "./fixture.ts";
import { callDoor } from "./page.ts";
import type { Tapeline } from "./session.ts";

const people: readonly Invented[] = [
  { league: "Foundry Town", name: "Ash Velvet", number: "7391", board: "name" },
  { league: "Foundry Town", name: "Briar Knox", number: "8264", board: "bib" },
  { league: "Quarry Lane", name: "Cinder Rue", number: "9157", board: "hidden" },
];

/** Starts the app on a day that was made through the same door, and opens the board, whose scenes wait for the test. */
async function openBoardOn(
  tapeline: Tapeline,
  make: (file: string) => Promise<BoardDay>,
): Promise<{ board: Page; ids: readonly number[] }> {
  let ids: readonly number[] = [];
  await tapeline.restart(async () => {
    const day = await make(join(tapeline.folder, "tapeline.sqlite"));
    ids = day.ids;
    day.desk.close();
  });
  await tapeline.clock.hold();
  return { board: await tapeline.openBoard(), ids };
}

/** Three with 20 push-ups from the spring. */
async function spring(file: string): Promise<BoardDay> {
  const day = await boardDay(people, file);
  for (const bib of [1, 2, 3]) day.past(bib, "push-up", 20);
  return day;
}

/** Enters push-ups as the desk's page does. */
async function pushUps(desk: Page, athleteId: number | undefined, reps: number): Promise<void> {
  const attempts = [ticket({ how: "tally", reps, offAtEnd: 0 })];
  const entry = { athleteId, test: "push-up", variant: "full", attempts, by: "QA", sure: true };
  await callDoor(desk, "station.enter", entry);
}

/** Both directions of the jumps, of which nobody here has a mark from before. */
async function jumps(desk: Page, athleteId: number | undefined): Promise<void> {
  const attempts = [trial("cw", 6, 0), trial("ccw", 6, 0)].map(ticket);
  const entry = { athleteId, test: "agility", variant: "", attempts, by: "QA", sure: true };
  await callDoor(desk, "station.enter", entry);
}

/** Enters one attempt of a test that has no variants. */
async function enter(desk: Page, athleteId: number | undefined, code: string, seen: object): Promise<void> {
  const entry = { athleteId, test: code, variant: "", attempts: [ticket(seen)], by: "QA", sure: true };
  await callDoor(desk, "station.enter", entry);
}

const scene = (board: Page, name: string) => board.getByRole("region", { name });

test("an empty board teaches, and the first best takes its place as it is entered", async ({ tapeline }) => {
  const { board, ids } = await openBoardOn(tapeline, spring);
  await expect(
    board.getByRole("heading", { name: "The first results of the day appear here" }),
  ).toBeVisible();
  await pushUps(tapeline.desk, ids[0], 23);
  const hero = board.getByRole("article");
  await expect(hero).toContainText("Ash Velvet");
  await expect(hero).toContainText("+3");
  await expect(hero).toContainText("more reps");
  await expect(hero).toContainText("now 23");
  await expect(board.getByRole("banner")).toContainText("1 personal best today");
  await pushUps(tapeline.desk, ids[1], 29);
  await expect(hero).toContainText("bib 2");
  await expect(hero).toContainText("a clear gain");
  await expect(scene(board, "Newest results")).toContainText("Ash Velvet");
  await pushUps(tapeline.desk, ids[2], 40);
  await jumps(tapeline.desk, ids[0]);
  const head = board.getByRole("banner");
  // Two push-ups and a first mark in the jumps; the hidden one's best is in no count.
  await expect(head).toContainText("3 tests done");
  await expect(head).toContainText("2 personal bests today");
  await expect(hero).toContainText("bib 2");
  await expect(board.locator("body")).not.toContainText("Cinder Rue");
});

test("a time says faster or longer and carries no sign, on the newest best and on its wall", async ({
  tapeline,
}) => {
  const { board, ids } = await openBoardOn(tapeline, async (file) => {
    const day = await boardDay(people, file);
    day.past(1, "core", 180);
    // In milliseconds: 6:20.0.
    day.past(1, "endurance", 380_000);
    return day;
  });
  const hero = board.getByRole("article");
  await pushUps(tapeline.desk, ids[0], 23);
  await jumps(tapeline.desk, ids[0]);
  await enter(tapeline.desk, ids[0], "vertical", { standingReach: 2100, touchReach: 2520 });
  await enter(tapeline.desk, ids[0], "core", { held: 209_000 });
  // 209 − 180 = 29 s; 380 − 354.9 = 25.1 s.
  await expect(hero.locator("strong").first()).toHaveText("29");
  await expect(hero).toContainText("seconds longer");
  await enter(tapeline.desk, ids[0], "endurance", { finished: true, time: 354_900 });
  await expect(hero.locator("strong").first()).toHaveText("25.1");
  await expect(hero).toContainText("seconds faster");
  await expect(board.locator("body")).not.toContainText("−");
});

test("a consent changed at the desk changes the board at once, in each of the three ways", async ({
  tapeline,
}) => {
  const { board, ids } = await openBoardOn(tapeline, spring);
  await pushUps(tapeline.desk, ids[0], 23);
  const main = board.locator("body");
  await expect(main).toContainText("Ash Velvet");
  const consent = (way: string) =>
    callDoor(tapeline.desk, "people.setConsent", { athleteId: ids[0], board: way, share: false });
  await consent("bib");
  await expect(main).toContainText("bib 1");
  await expect(main).not.toContainText("Ash Velvet");
  await consent("hidden");
  await expect(main).not.toContainText("bib 1");
  await expect(main).toContainText("The first results of the day appear here");
  await expect(main).not.toContainText("best today");
  await consent("name");
  await expect(main).toContainText("Ash Velvet");
});

test("a key at the desk blanks the board at once, and shows it again; so does a key at the board itself", async ({
  tapeline,
}) => {
  const { board, ids } = await openBoardOn(tapeline, spring);
  await pushUps(tapeline.desk, ids[0], 23);
  const hero = board.getByRole("article");
  await expect(hero).toContainText("Ash Velvet");
  const asked = performance.now();
  await tapeline.desk.keyboard.press("Alt+H");
  await expect(board.getByRole("img", { name: "The big screen is hidden" })).toBeVisible();
  console.log(`blank, seen ${(performance.now() - asked).toFixed(0)} ms after the key`);
  expect(await board.evaluate(() => document.body.textContent?.trim())).toBe("");
  // What happens meanwhile does not bring it back.
  await pushUps(tapeline.desk, ids[1], 29);
  await expect(hero).toBeHidden();
  await tapeline.desk.getByRole("button", { name: /Show the big screen$/ }).click();
  await expect(hero).toContainText("bib 2");
  await board.keyboard.press("h");
  await expect(hero).toBeHidden();
  await board.keyboard.press("h");
  await expect(hero).toBeVisible();
});

test("who is called stands on the board in every scene, until the call ends", async ({ tapeline }) => {
  const { board, ids } = await openBoardOn(tapeline, spring);
  const strip = scene(board, "Called now");
  await expect(strip).toContainText("When a station calls you, your bib number shows here.");
  for (const athleteId of ids) {
    await callDoor(tapeline.desk, "station.callAthlete", { athleteId, test: "push-up" });
  }
  await expect(strip.getByRole("listitem").filter({ hasText: /^\d+$/ })).toHaveText(["1", "2"]);
  await pushUps(tapeline.desk, ids[0], 20);
  await expect(strip.getByRole("listitem").filter({ hasText: /^\d+$/ })).toHaveText(["2"]);
});

test("the scenes take turns, and a new best interrupts them at once", async ({ tapeline }) => {
  const { board, ids } = await openBoardOn(tapeline, spring);
  await pushUps(tapeline.desk, ids[0], 20);
  await expect(board.getByRole("banner")).toContainText("1 test done");
  await tapeline.clock.pass(13_900);
  await expect(scene(board, "Gains")).toBeHidden();
  await tapeline.clock.pass(100);
  await expect(scene(board, "Gains")).toContainText("equal");
  await pushUps(tapeline.desk, ids[1], 25);
  // No scene comes to its end meanwhile: no time passes.
  await expect(board.getByRole("article")).toContainText("bib 2");
  // A mark that is no best changes what is shown without turning the page.
  await jumps(tapeline.desk, ids[0]);
  await expect(board.getByRole("banner")).toContainText("3 tests done");
  await expect(board.getByRole("article")).toContainText("bib 2");
});

test("the foot of the board is one tape, and its marker stands in the stretch of the scene that is shown", async ({
  tapeline,
}) => {
  const { board, ids } = await openBoardOn(tapeline, spring);
  await pushUps(tapeline.desk, ids[0], 20);
  await tapeline.clock.pass(14_000);
  await expect(scene(board, "Gains")).toBeVisible();
  const foot = board.locator('[data-part="foot"]');
  await expect(foot.locator("> *")).toHaveCount(1);
  // The newest bests stay for 14 of 37 seconds, then the gains for 12, then who is called for 11.
  const place = await foot.locator("> *").evaluate((marker) => {
    return new DOMMatrix(getComputedStyle(marker).transform).e / marker.clientWidth;
  });
  expect(place).toBeGreaterThanOrEqual(14 / 37 - 0.001);
  expect(place).toBeLessThanOrEqual(26 / 37 + 0.001);
});

test("the board draws nothing by itself between two seconds: its marker goes from tick to tick, and no animation runs", async ({
  tapeline,
}) => {
  const { board, ids } = await openBoardOn(tapeline, spring);
  await pushUps(tapeline.desk, ids[0], 23);
  await expect(board.getByRole("article")).toBeVisible();
  const marker = board.locator('[data-part="foot"] > *');
  const place = () =>
    marker.evaluate((each) => new DOMMatrix(getComputedStyle(each).transform).e / each.clientWidth);
  const running = () => board.evaluate(() => document.getAnimations().length);
  const before = await place();
  for (let second = 1; second <= 5; second += 1) {
    await tapeline.clock.pass(1_000);
    // The newest results, the gains, who is called: 37 seconds.
    await expect.poll(place).toBeCloseTo(before + second / 37, 3);
  }
  // What news set in motion has come to rest.
  await expect.poll(running).toBe(0);
});

test("200 athletes and long names fit every screen, and no text is too small for the hall", {
  tag: "@sweep",
}, async ({ tapeline }) => {
  const { board } = await openBoardOn(tapeline, (file) => crowdedDay(200, file));
  for (const [width, height, scenes] of [
    [1920, 1080, 4],
    [1280, 720, 4],
    [3840, 2160, 4],
    [1024, 768, 5],
  ] as const) {
    await resize(board, { width, height });
    await board.reload();
    await board.waitForFunction(() => document.documentElement.dataset.ready === "true");
    const seen = new Set<string>();
    for (let turn = 0; turn < scenes; turn += 1) {
      expect.soft(await faultsOf(board), `${width} × ${height}, scene ${turn}`).toEqual([]);
      seen.add((await board.getByRole("main").textContent()) ?? "");
      await tapeline.clock.pass(15_000);
    }
    expect(seen.size).toBeGreaterThanOrEqual(scenes - 1);
  }
});

/** Fonts, layout and news of one picture, without faults. */
async function expectPicture(
  board: Page,
  size: { width: number; height: number },
  name: string,
): Promise<void> {
  await resize(board, size);
  await board.waitForFunction(() => document.documentElement.dataset.ready === "true");
  expect.soft(await faultsOf(board), `${name} at ${size.width}`).toEqual([]);
  await board.screenshot({ path: test.info().outputPath(`${name}-${size.width}.png`) });
}

const halls = [
  { width: 1920, height: 1080 },
  { width: 1280, height: 720 },
] as const;

test("on a first day first results are welcomed and counted, and no nought stands anywhere", async ({
  tapeline,
}) => {
  const { board, ids } = await openBoardOn(tapeline, (file) => boardDay(people, file));
  for (const size of halls) await expectPicture(board, size, "empty");
  await pushUps(tapeline.desk, ids[0], 31);
  await pushUps(tapeline.desk, ids[1], 12);
  await pushUps(tapeline.desk, ids[2], 40);
  const hero = board.getByRole("article");
  await expect(hero).toContainText("First result");
  await expect(hero).toContainText("bib 2");
  await expect(scene(board, "Newest results")).toContainText("Ash Velvet");
  await expect(board.getByRole("banner")).toContainText("2 first results today");
  for (const size of halls) await expectPicture(board, size, "first");
  await tapeline.clock.pass(14_000);
  await tapeline.clock.pass(12_000);
  await expect(scene(board, "Calls and totals")).toContainText("2 first results today");
  await expect(board.locator("body")).not.toContainText("0 personal bests");
  for (const size of halls) await expectPicture(board, size, "first-floor");
  await expect(board.locator("body")).not.toContainText("Cinder Rue");
});

/** The words of names on the walls that are broken in their middle, and the names that are cut off. */
function brokenNames(board: Page): Promise<string[]> {
  return board.evaluate(() =>
    [...document.querySelectorAll("[data-room]")].flatMap((label) => {
      const text = label.firstChild;
      if (text === null) return [];
      const words = [...(text.textContent ?? "").matchAll(/\S+/g)].filter((word) => {
        const range = document.createRange();
        range.setStart(text, word.index);
        range.setEnd(text, word.index + word[0].length);
        return range.getClientRects().length !== 1;
      });
      // Tight lines let the feet of letters stand out; a third line is cut.
      const isCut =
        label.scrollHeight > label.clientHeight + Number.parseFloat(getComputedStyle(label).fontSize) / 2;
      return [...words.map(([word]) => word), ...(isCut ? [`${label.textContent} is cut`] : [])];
    }),
  );
}

test("on a first day three walls beside each other keep every name whole", async ({ tapeline }) => {
  const named = ["Quick Lichen", "Brindle Hob", "Marl Otter"].map((name, index) => ({
    ...{ league: "Foundry Town", name, number: String(index + 1), board: "name" as const },
  }));
  const { board, ids } = await openBoardOn(tapeline, (file) => boardDay(named, file));
  for (const id of ids) {
    await pushUps(tapeline.desk, id, 21);
    await enter(tapeline.desk, id, "vertical", { standingReach: 2100, touchReach: 2525 });
    const attempts = [trial("cw", 6, 0), trial("ccw", 5, 1)].map(ticket);
    const entry = { athleteId: id, test: "agility", variant: "", attempts, by: "QA", sure: true };
    await callDoor(tapeline.desk, "station.enter", entry);
  }
  await tapeline.clock.pass(15_000);
  await expect(scene(board, "Gains")).toBeVisible();
  for (const size of halls) {
    await resize(board, size);
    expect(await brokenNames(board)).toEqual([]);
  }
});

for (const count of [0, 3, 200]) {
  test(`a closed day of ${count} ends on the big screen with thanks and what was done, and names nobody there`, {
    tag: "@sweep",
  }, async ({ tapeline }) => {
    const { board } = await openBoardOn(tapeline, async (file) => {
      if (count === 200) return crowdedDay(count, file);
      const day = await boardDay(people, file);
      if (count > 0) day.past(1, "push-up", 20);
      for (const bib of count === 0 ? [] : [1, 2, 3]) {
        const seen = { how: "tally", reps: 23, offAtEnd: 0 };
        await day.enter(bib, "push-up", seen);
      }
      return day;
    });
    // The first day of a new store.
    await callDoor(tapeline.desk, "day.close", { dayId: 1 });
    const closing = scene(board, "The end of the day");
    await expect(closing).toContainText("Thank you, everybody!");
    await expect(closing).toContainText("see you then");
    if (count === 3) {
      await expect(closing).toContainText("1 personal best today");
      await expect(closing).toContainText("1 first result today");
      await expect(closing).toContainText("2 athletes tested");
    }
    if (count === 0) await expect(closing.locator("strong")).toHaveCount(0);
    await expect(closing).not.toContainText("Ash Velvet");
    for (const size of halls) await expectPicture(board, size, `closed-${count}`);
    // Longer words find their place, too.
    await callDoor(tapeline.desk, "language.choose", { language: "es" });
    await expect(board.getByRole("heading", { name: "¡Muchas gracias!" })).toBeVisible();
    for (const size of halls) await expectPicture(board, size, `closed-${count}-es`);
  });
}
