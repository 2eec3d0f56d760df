import { expect, type Locator, type Page } from "@playwright/test";
import { expectForEverybody } from "./axe.ts";
import { callDoor } from "./page.ts";
import { test } from "./shared.ts";

const outcome = { bib: null, leaveOut: [], board: "bib", share: true, guardianConsent: false, by: "QA" };

interface Seen {
  readonly reps: number;
  readonly laps: number;
  readonly touchReach: number;
  readonly held: number;
  readonly time: number;
}

async function openDay(desk: Page, date: string): Promise<number> {
  const { dayId } = (await callDoor(desk, "day.create", { sure: true, date, title: `Day of ${date}` })) as {
    dayId: number;
  };
  await callDoor(desk, "day.open", { sure: true });
  return dayId;
}

async function enter(desk: Page, athleteId: number, code: string, ...seen: unknown[]): Promise<void> {
  const attempts = seen.map((each) => ({ id: crypto.randomUUID(), seen: each }));
  const variant = code === "push-up" ? "full" : "";
  await callDoor(desk, "station.enter", { athleteId, test: code, variant, by: "QA", sure: true, attempts });
}

/** All five tests of one athlete on the day at hand. */
async function fiveTests(desk: Page, athleteId: number, seen: Seen): Promise<void> {
  const jump = { laps: seen.laps, extra: 0, touches: 0 };
  await enter(desk, athleteId, "push-up", { how: "tally", reps: seen.reps, offAtEnd: 0 });
  await enter(desk, athleteId, "agility", { direction: "cw", ...jump }, { direction: "ccw", ...jump });
  await enter(desk, athleteId, "vertical", { standingReach: 2100, touchReach: seen.touchReach });
  await enter(desk, athleteId, "core", { held: seen.held });
  await enter(desk, athleteId, "endurance", { finished: true, time: seen.time });
}

/**
 * Three testing days of one athlete; twenty others who share take the first test of the last one. The first test that asks
 * enters them, and those after it look at the same ones.
 */
async function threeDays(desk: Page): Promise<void> {
  const { day } = await desk.evaluate(async () => {
    const response = await fetch("/trpc/day.current");
    return (await response.json()).result.data as { day: unknown };
  });
  if (day !== null) return;
  const first = await openDay(desk, "2026-03-14");
  const who = { league: "North Quay", name: "Anvil Sparrow", number: "7", birthYear: 1990 };
  await callDoor(desk, "checkIn.walkUp", { ...who, ...outcome });
  await fiveTests(desk, 1, { reps: 20, laps: 6, touchReach: 2500, held: 90_000, time: 400_000 });
  await callDoor(desk, "day.close", { dayId: first });
  const second = await openDay(desk, "2026-07-11");
  await callDoor(desk, "checkIn.admit", { athleteId: 1, ...outcome });
  await fiveTests(desk, 1, { reps: 22, laps: 7, touchReach: 2500, held: 125_000, time: 380_000 });
  await callDoor(desk, "day.close", { dayId: second });
  await openDay(desk, "2026-11-14");
  await callDoor(desk, "checkIn.admit", { athleteId: 1, ...outcome });
  await fiveTests(desk, 1, { reps: 30, laps: 7, touchReach: 2510, held: 120_000, time: 340_000 });
  for (let index = 0; index < 20; index += 1) {
    const other = { league: "Gravel Moon", name: `Plover ${index}`, number: String(index), birthYear: 1991 };
    await callDoor(desk, "checkIn.walkUp", { ...other, ...outcome });
    await enter(desk, index + 2, "push-up", { how: "tally", reps: 15 + index, offAtEnd: 0 });
  }
}

/** What the page's content policy refused since this was called. */
async function listenToPolicy(desk: Page): Promise<() => Promise<string[]>> {
  await desk.evaluate(() => {
    const refused: string[] = [];
    Object.assign(window, { refused });
    document.addEventListener("securitypolicyviolation", (event) => refused.push(event.violatedDirective));
  });
  return () => desk.evaluate(() => (window as unknown as { refused: string[] }).refused);
}

async function go(desk: Page, path: string): Promise<void> {
  await desk.evaluate((hash) => {
    location.hash = hash;
  }, path);
}

/** The middle of each mark of a picture, oldest first: px from the top of the window. */
async function heightsIn(region: Locator): Promise<number[]> {
  const marks = region.locator("svg g[data-today]");
  await expect(marks).toHaveCount(3);
  return marks.evaluateAll((all) =>
    all.map((each) => {
      const { top, height } = each.getBoundingClientRect();
      return top + height / 2;
    }),
  );
}

test("an athlete's marks over time are read by eye, by keys and in a table, each with its honest verdict", async ({
  tapeline: { desk },
}) => {
  await threeDays(desk);
  const refused = await listenToPolicy(desk);
  await go(desk, "/athletes/1");
  const strength = desk.getByRole("region", { name: /^Strength/ }).first();
  await expect(strength).toContainText(
    /Clear gain: chance alone goes this far in at most 1 of 40\. About \d\d in 100 such gains are real\./,
  );
  await expect(strength).toContainText("+9 reps on the level so far, from 2 results");
  await expect(strength).toContainText(/Level now 2\d reps, give or take [\d.]+\. (?:Gaining|Up or down)/);
  await expect(strength).toContainText("Personal best");
  // Of twenty others, with the athlete's own variation: from 34 on, which is too wide to be a place.
  await expect(strength).toContainText("Too uncertain to give a place yet among 20 others");
  await expect(strength.getByRole("row")).toHaveCount(4);
  await expect(strength.getByRole("row").nth(1)).toContainText("+9 reps, clear gain");

  const plot = strength.getByRole("slider", { name: "Strength over time" });
  await plot.focus();
  await expect(plot).toHaveAttribute("aria-valuetext", "14 Nov 2026, today: 30 reps");
  await plot.press("ArrowLeft");
  await expect(strength.getByText("11 Jul 2026: 22 reps")).toBeVisible();
  await plot.press("Home");
  await expect(plot).toHaveAttribute("aria-valuetext", "14 Mar 2026: 20 reps");
  await plot.press("End");
  await expect(plot).toHaveAttribute("aria-valuenow", "3");

  const agility = desk.getByRole("region", { name: /^Agility/ }).first();
  await expect(agility).toContainText("+0.75 landings on the level so far, from 2 results");
  const core = desk.getByRole("region", { name: /^Core/ }).first();
  await expect(core).toContainText(
    /Within normal variation\. About \d\d in 100 such losses are real, too few to call it one\./,
  );
  await expect(core).toContainText("Not enough to compare");
  await core.locator("svg g[data-today]").first().hover();
  await expect(core.getByText(/^14 Mar 2026: 1:30, /)).toBeVisible();

  // Better is higher up, whichever way the test counts.
  const endurance = desk.getByRole("region", { name: /^Endurance/ }).first();
  await expect(endurance).toContainText("faster is up");
  const [slow = 0, faster = 0, fastest = 0] = await heightsIn(endurance);
  expect(slow).toBeGreaterThan(faster);
  expect(faster).toBeGreaterThan(fastest);
  await expectForEverybody(desk);
  expect(await refused()).toEqual([]);
});

test("the signs of the five tests differ in shape and letter alone, with every colour taken away", async ({
  tapeline: { desk },
}) => {
  await threeDays(desk);
  await go(desk, "/athletes/1");
  const signs = desk.locator('main svg g[data-today="true"]');
  await expect(signs).toHaveCount(5);
  const letters = await signs.locator("text").allTextContents();
  expect(new Set(letters).size).toBe(5);
  // Each shape painted black in the box of the signs: how much of two of them together only one covers.
  const differences = await signs.evaluateAll((drawn) => {
    const masks = drawn.map((sign) => {
      const canvas = new OffscreenCanvas(48, 48);
      const pen = canvas.getContext("2d");
      // What is cut out of a sign is a path of its own.
      const paths = [...sign.querySelectorAll("path")].map((path) => path.getAttribute("d") ?? "");
      pen?.fill(new Path2D(paths.join("")), "evenodd");
      const bytes = pen?.getImageData(0, 0, 48, 48).data ?? [];
      return Array.from(bytes)
        .filter((_byte, index) => index % 4 === 3)
        .map((alpha) => alpha > 127);
    });
    return masks.flatMap((one, index) =>
      masks.slice(index + 1).map((other) => {
        const either = one.filter((inside, at) => inside || other[at]).length;
        return one.filter((inside, at) => inside !== other[at]).length / either;
      }),
    );
  });
  expect(differences).toHaveLength(10);
  expect(Math.min(...differences)).toBeGreaterThan(0.1);
});
