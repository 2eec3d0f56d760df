import { expect, type Page } from "@playwright/test";
import { type TestCode, testCodes } from "../../electron/domain/tests/registry.ts";
import { test as alone } from "./fixture.ts";
import { nameOf, notInSight, showOn, smallScreens, widerBy } from "./in-sight.ts";
import { countedKeys, gather, openLive, setLanes, startedAgo } from "./live.ts";
import { callDoor } from "./page.ts";
import { test } from "./shared.ts";
import { keyFromPaper } from "./stations.ts";

/** Looks at one state of a screen on all small screens. */
async function expectInSight(desk: Page, state: string, selector: string): Promise<void> {
  for (const screen of smallScreens) {
    await showOn(desk, screen);
    expect.soft(await notInSight(desk, selector), `${state}, ${nameOf(screen)}`).toEqual([]);
    expect.soft(await widerBy(desk), `${state}, ${nameOf(screen)}: too wide`).toBeLessThan(2);
  }
}

async function goTo(desk: Page, path: string): Promise<void> {
  await desk.evaluate((hash) => {
    location.hash = hash;
  }, path);
  await expect(desk.locator("main h1").first()).toBeAttached();
  await desk.waitForFunction(() => document.querySelector('[aria-busy="true"]') === null);
}

async function openDay(desk: Page): Promise<void> {
  await callDoor(desk, "day.create", { sure: true, date: "2026-11-14", title: "Autumn testing day" });
  await callDoor(desk, "day.open", { sure: true });
}

const outcome = { leaveOut: [], board: "bib", share: false, guardianConsent: true, by: "QA" } as const;

/** Somebody who is expected: nothing was ever asked of them. */
async function expectSomebody(desk: Page, name: string, birthYear: number | null): Promise<void> {
  const who = {
    league: "North Quay Rollers",
    name,
    number: `${name.length}`,
    birthYear: birthYear ?? 1990,
    bib: null,
  };
  const { athleteId } = (await callDoor(desk, "checkIn.walkUp", { ...who, ...outcome })) as {
    athleteId: number;
  };
  const before = {
    board: "bib",
    share: false,
    guardianConsent: false,
    asked: false,
    birthYear,
    category: null,
  };
  await callDoor(desk, "checkIn.undo", { athleteId, before });
}

async function open(desk: Page, name: string): Promise<void> {
  const search = desk.getByRole("combobox", { name: "Who is it?" });
  await search.fill(name);
  await expect(desk.getByRole("option", { name }).first()).toBeVisible();
  await search.press("Enter");
  await expect(desk.locator("form")).toBeVisible();
}

/** Every question, everything to press or type in, and who is asked. */
const asked =
  "main form [data-part], main form input:not([type=radio]), main form label, main form button, main form p, main h2";

alone("check-in asks everything in one sight on every small screen", async ({ tapeline: { desk } }) => {
  await openDay(desk);
  await expectSomebody(desk, "Petra Fied", null);
  await expectSomebody(desk, "Wilhelmina Featherstone the Second", 2012);
  await goTo(desk, "/check-in");
  await open(desk, "Petra");
  await expectInSight(desk, "first time, year unknown", asked);
  await desk.locator("[data-part=under18]").getByText("Yes").click();
  await expect(desk.locator("[data-part=guardian]")).toBeVisible();
  await expectInSight(desk, "first time, under 18", asked);
  await desk.getByRole("button", { name: "Answer one by one" }).click();
  await expectInSight(desk, "first time, under 18, one by one", asked);
  await goTo(desk, "/day");
  await goTo(desk, "/check-in");
  await open(desk, "Wilhelmina");
  await desk.getByRole("button", { name: "Answer one by one" }).click();
  await expectInSight(desk, "a known minor, one by one", asked);
});

alone("a walk-up is asked everything in one sight on every small screen", async ({ tapeline: { desk } }) => {
  await openDay(desk);
  await expectSomebody(desk, "Petra Fied", null);
  for (const screen of smallScreens) {
    await showOn(desk, screen);
    await goTo(desk, "/day");
    await goTo(desk, "/check-in");
    await open(desk, "Petra");
    await desk.getByRole("button", { name: "Answer one by one" }).click();
    await desk.locator("[data-part=share]").getByText("Yes").click();
    await desk.keyboard.press("Alt+n");
    await expect(desk.getByRole("textbox", { name: "Derby name" })).toBeFocused();
    expect.soft(await notInSight(desk, "main :focus"), `the name, ${nameOf(screen)}`).toEqual([]);
  }
  await expectInSight(desk, "walk-up", asked);
  await desk.locator("[data-part=under18]").getByText("Yes").click();
  await expectInSight(desk, "walk-up, under 18", asked);
  await desk.getByRole("textbox", { name: "Year of birth" }).first().fill("2012");
  await expect(desk.locator("[data-part=guardian]")).toBeVisible();
  await expectInSight(desk, "walk-up, born 2012", asked);
});

test("every station's fields and its button to save are in one sight on every small screen", async ({
  tapeline: { desk },
}) => {
  // In the demonstration, whose athletes have results from before to be compared with.
  await callDoor(desk, "day.openDemo");
  await desk.reload();
  const entry = 'section[aria-label="Enter a result"]';
  const fields = `${entry} input:not([type=radio], [type=checkbox]), ${entry} label, ${entry} button`;
  for (const code of testCodes) {
    await goTo(desk, `/station/${code}`);
    await keyFromPaper(desk);
    await expectInSight(desk, `${code}, no bib`, fields);
    const waiting = desk.getByRole("region", { name: /Waiting here/ }).getByRole("listitem");
    await waiting.first().getByRole("button").first().click();
    await expect(desk.getByRole("button", { name: /^Save the result/ })).toBeVisible();
    await expectInSight(desk, `${code}, somebody`, fields);
    await desk.keyboard.press("Escape");
  }
});

const lanes =
  "[data-whole-window] [data-lane], [data-whole-window] [data-lane] button, [data-whole-window] button";
const gathering =
  "[data-whole-window] ol:first-of-type > li, [data-whole-window] button[aria-keyshortcuts], [data-whole-window] input:not([type=range])";

/** Where a test begins for all at once, and a moment at which most of it is shown. */
const common: Readonly<Partial<Record<TestCode, number>>> = { "push-up": 12, core: 70, endurance: 40 };

for (const [code, at] of Object.entries(common) as [TestCode, number][]) {
  const counts = code === "endurance" ? [4, 8] : code === "core" ? [4, 6] : [4];
  for (const count of counts) {
    alone(
      `${code} with ${count} lanes is run in one sight on every small screen`,
      async ({ tapeline: { desk } }) => {
        await openLive(desk, code, count + 2);
        await setLanes(desk, count);
        await expectInSight(desk, `${code}, nobody called`, gathering);
        await gather(desk, countedKeys(desk), count);
        await expectInSight(desk, `${code}, called`, gathering);
        await startedAgo(desk, code, at);
        await expectInSight(desk, `${code}, running`, lanes);
        if (code === "endurance") {
          await desk.keyboard.press("1");
          await desk.keyboard.press("Shift+Digit2");
          await expectInSight(desk, `${code}, how far`, lanes);
          await desk.keyboard.press("Escape");
        }
        for (let lane = 1; lane <= count; lane += 1) {
          if (code === "core") await desk.keyboard.press(`${lane}`);
          if (code === "push-up") await desk.keyboard.press(`Shift+Digit${lane}`);
        }
        if (code === "endurance") return;
        await expect(desk.getByRole("button", { name: /^Call the next heat/ })).toBeVisible();
        await expectInSight(desk, `${code}, done`, lanes);
      },
    );
  }
}

alone(
  "a doubtful result moves no lane of twelve while others are at it, and is asked about once all are done",
  async ({ tapeline: { desk } }) => {
    await openLive(desk, "endurance", 14);
    await setLanes(desk, 12);
    await showOn(desk, { width: 1280, height: 800, scale: 1 });
    await gather(desk, countedKeys(desk), 12);
    // Less than two minutes are asked about, less than 45 seconds are refused.
    await startedAgo(desk, "endurance", 60);
    const keys = ["1", "2", "3", "4", "5", "6", "7", "8", "9", "0", "-", "="];
    const heights = () =>
      desk
        .locator("li[data-lane]")
        .evaluateAll((all) => all.map((each) => Math.round(each.getBoundingClientRect().height)));
    // After a first tap, which can be undone.
    await desk.keyboard.press("2");
    await expect(desk.getByRole("button", { name: /^Undo/ })).toBeVisible();
    const before = await heights();
    expect(before).toHaveLength(12);
    for (let round = 1; round <= 3; round += 1) {
      await desk.keyboard.press("1");
      // A second tap of a lane within two seconds is the same one.
      await desk.waitForTimeout(2_200);
    }
    await expect(desk.locator("[data-lane='1']")).toContainText("Doubtful");
    // What is done has a line more than what is under way, doubtful or not; a question would have five and two buttons.
    expect(Math.max(...(await heights())) - Math.max(...before)).toBeLessThan(24);
    await expect(desk.getByRole("button", { name: /^Yes, it is right/ })).toHaveCount(0);
    for (let round = 1; round <= 3; round += 1) {
      for (const key of keys.slice(1)) await desk.keyboard.press(key);
      await desk.waitForTimeout(2_200);
    }
    await expect(desk.getByRole("button", { name: /^Yes, it is right/ })).toHaveCount(12);
  },
);

alone(
  "eight lanes in doubt have both answers beside each question, and the next step in sight, on every small screen",
  async ({ tapeline: { desk } }) => {
    await openLive(desk, "endurance", 10);
    await setLanes(desk, 8);
    await gather(desk, countedKeys(desk), 8);
    // Less than two minutes are asked about, less than 45 seconds are refused.
    await startedAgo(desk, "endurance", 60);
    for (let round = 1; round <= 3; round += 1) {
      for (let lane = 1; lane <= 8; lane += 1) await desk.keyboard.press(`${lane}`);
      // A second tap of a lane within two seconds is the same one.
      await desk.waitForTimeout(2_200);
    }
    await expect(desk.getByRole("button", { name: /^Yes, it is right/ })).toHaveCount(8);
    await expect(desk.getByText(/^8 results are doubtful/)).toBeVisible();
    for (const screen of smallScreens) {
      await showOn(desk, screen);
      const at = nameOf(screen);
      expect.soft(await notInSight(desk, "[data-lane='1'], [data-lane='1'] button"), at).toEqual([]);
      expect.soft(await notInSight(desk, "button[aria-keyshortcuts=N]"), at).toEqual([]);
      expect.soft(await widerBy(desk), `${at}: too wide`).toBeLessThan(2);
    }
    // The usual screen of a station has all of it.
    await showOn(desk, { width: 1280, height: 800, scale: 1 });
    expect(await notInSight(desk, lanes)).toEqual([]);
    // An answer takes the question away.
    await desk.getByRole("button", { name: "Yes, it is right: the result of bib 3" }).click();
    await expect(desk.getByText(/^7 results are doubtful/)).toBeVisible();
    await expect(desk.locator("[data-lane='3']")).toContainText("First result");
  },
);

/** At a person's pace: as fast as the machine types it would be a scanner's. */
async function typeReading(desk: Page, digits: string): Promise<void> {
  for (const digit of digits) {
    await desk.keyboard.press(digit);
    await desk.waitForTimeout(90);
  }
}

for (const code of ["agility", "vertical"] as const) {
  alone(`${code} with 4 lanes is run in one sight on every small screen`, async ({ tapeline: { desk } }) => {
    await openLive(desk, code, 6);
    await setLanes(desk, 4);
    await expectInSight(desk, `${code}, nobody called`, gathering);
    await desk.keyboard.press("n");
    await desk.getByRole("dialog").getByRole("textbox").fill("QA");
    await desk.keyboard.press("Enter");
    await expect(desk.locator('[data-lane="4"]')).toBeVisible();
    await expectInSight(desk, `${code}, called`, lanes);
    if (code === "vertical") {
      await typeReading(desk, "220");
      await desk.keyboard.press("Enter");
      await expect(
        desk
          .getByText("Reach 220 cm")
          .or(desk.getByRole("heading", { name: /touch/i }))
          .first(),
      ).toBeVisible();
      await expectInSight(desk, `${code}, jumping`, lanes);
      // A touch of 95 cm above the reach is asked about: the question moves neither the answers nor the caution away.
      await typeReading(desk, "315");
      await expect(desk.getByText(/95 cm .* is a very high jump/)).toBeVisible();
      await expectInSight(desk, `${code}, asking`, `${lanes}, [data-whole-window] p`);
      return;
    }
    await desk.keyboard.press("a");
    await expectInSight(desk, `${code}, running`, lanes);
    await expect(desk.locator("[aria-current=step]").first()).toBeVisible();
    await expectInSight(desk, `${code}, counting`, lanes);
  });
}

test("no other screen is wider than a small screen", async ({ tapeline: { desk } }) => {
  await callDoor(desk, "day.openDemo");
  await desk.reload();
  const screens = [
    "",
    "day",
    "sheets",
    "check-in",
    "athletes",
    "athletes/3",
    "bundle",
    "papers",
    "papers/bibs",
    "papers/badges",
    "instructions",
    "noise",
    "study",
  ];
  for (const path of [...screens, "rehearsal", "plan", "summary", "cards", "lock", "report", "reference"]) {
    await goTo(desk, `/${path}`);
    for (const screen of smallScreens) {
      await showOn(desk, screen);
      expect.soft(await widerBy(desk), `${path}, ${nameOf(screen)}`).toBeLessThan(2);
    }
  }
});
