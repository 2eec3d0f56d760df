import { expect, type Page } from "@playwright/test";
import { expectForEverybody } from "./axe.ts";
import { test as alone } from "./fixture.ts";
import { countedKeys, gather, laneOf, openLive, setLanes, startedAgo } from "./live.ts";
import { callDoor, goTo } from "./page.ts";
import { goToPaper, key } from "./paper.ts";
import { test } from "./shared.ts";
import { bringSheet, roster, takeSheet } from "./sheets.ts";
import { entryOf, keyFromPaper, type Station } from "./stations.ts";

async function openDemo(desk: Page): Promise<void> {
  await desk.getByRole("button", { name: "Open the demo" }).click();
  await expect(desk.getByRole("heading", { name: "Overview of the day" })).toBeVisible();
}

test("the first screen, empty and with a fault", async ({ tapeline: { desk } }) => {
  await expectForEverybody(desk);
  await desk.getByRole("button", { name: "Create the day" }).click();
  await expectForEverybody(desk);
});

alone(
  "a planned day, its rules and their question; a closed one, and the start after it",
  async ({ tapeline: { desk } }) => {
    await callDoor(desk, "day.create", { sure: true, date: "2026-03-14", title: "Spring testing day" });
    await desk.reload();
    await expect(desk.getByRole("link", { name: "Go to your testing day" })).toBeVisible();
    await expectForEverybody(desk);
    await goTo(desk, "Overview");
    await desk.getByRole("button", { name: /^Change the settings: Quadrant jump/i }).click();
    await expect(desk.getByRole("alertdialog")).toBeVisible();
    await expectForEverybody(desk);
    await desk.keyboard.press("Escape");
    await desk.getByRole("button", { name: "Open the day" }).click();
    await expect(desk.getByRole("alertdialog", { name: "Open it today?" })).toBeVisible();
    await expectForEverybody(desk);
    await desk.getByRole("button", { name: "Open it today" }).click();
    await expect(desk.getByText(/^The day is open/)).toBeVisible();
    await expectForEverybody(desk);
    await callDoor(desk, "day.close", { dayId: 1 });
    await expect(desk.getByRole("heading", { name: "Earlier days" })).toBeVisible();
    await expectForEverybody(desk);
  },
);

test("a station live: nobody called, who is keying, the rules, and a test skipped", async ({
  tapeline: { desk },
}) => {
  await openDemo(desk);
  await goTo(desk, "Power");
  await expect(desk.getByRole("button", { name: /^Call the next/ })).toBeVisible();
  await expectForEverybody(desk);
  await desk.getByRole("button", { name: /^The rules/ }).click();
  await expect(desk.getByRole("link", { name: "Print the instructions" })).toBeVisible();
  await expectForEverybody(desk);
  await desk.keyboard.press("Escape");
  await desk.getByRole("button", { name: /^Enter from paper/ }).click();
  const waiting = desk.getByRole("region", { name: /Waiting here/ }).getByRole("listitem");
  await waiting.first().getByRole("button").first().click();
  await desk.getByRole("button", { name: /^Skip this test/ }).click();
  await expect(desk.getByRole("dialog").or(desk.getByRole("alertdialog"))).toBeVisible();
  await expectForEverybody(desk);
});

test("the day, its question and its rules", async ({ tapeline: { desk } }) => {
  await openDemo(desk);
  await expect(desk.getByRole("heading", { name: "Everyone testing today" })).toBeVisible();
  await expectForEverybody(desk);
  await desk.getByRole("button", { name: "Close the day" }).click();
  await expect(desk.getByRole("alertdialog")).toBeVisible();
  await expectForEverybody(desk);
});

test("the sheets to print", async ({ tapeline: { desk } }) => {
  await openDemo(desk);
  await desk.getByRole("link", { name: "Instruction sheets" }).click();
  await expect(desk.getByRole("heading", { name: "Your five tests" })).toBeVisible();
  await expectForEverybody(desk);
});

test("sheets: choosing one, one refused, one without a header, and one to look at", async ({ tapeline }) => {
  const { desk } = tapeline;
  await openDemo(desk);
  await goTo(desk, "Import");
  await expect(desk.getByRole("button", { name: "Choose a file" })).toBeVisible();
  await expectForEverybody(desk);
  await bringSheet(tapeline, "empty.csv", "");
  await expectForEverybody(desk);
  await desk.getByRole("button", { name: "Choose another file" }).click();
  await bringSheet(tapeline, "club.csv", "Crew,Name\nGravel Moon,Anvil Sparrow\n");
  await expect(desk.getByRole("combobox", { name: "League" })).toBeVisible();
  await expectForEverybody(desk);
  await desk.getByRole("button", { name: "Choose another file" }).click();
  await bringSheet(tapeline, "roster.csv", roster);
  await expect(desk.getByRole("button", { name: /^Import \d/ })).toBeVisible();
  await expectForEverybody(desk);
});

test("check-in: the search, the form, a yes, and what is missing", async ({ tapeline: { desk } }) => {
  await openDemo(desk);
  await goTo(desk, "Check-in");
  await expect(desk.getByRole("option").first()).toBeVisible();
  await expectForEverybody(desk);
  await desk.getByRole("option").first().click();
  await expect(desk.getByRole("button", { name: "No to all seven" })).toBeVisible();
  await expectForEverybody(desk);
  await desk.getByRole("button", { name: "Answer one by one" }).click();
  await expectForEverybody(desk);
  await desk
    .getByRole("radiogroup", { name: /game or a hard practice/ })
    .getByText("Yes", { exact: true })
    .click();
  await desk.keyboard.press("Control+Enter");
  await expect(desk.getByText(/answers? (is|are) missing/)).toBeVisible();
  await expectForEverybody(desk);
  await desk.keyboard.press("Alt+n");
  await expect(desk.getByRole("heading", { name: "Add a walk-up" })).toBeVisible();
  await expectForEverybody(desk);
});

const stations: readonly Station[] = ["Strength", "Agility", "Power", "Core", "Endurance"];

for (const station of stations) {
  test(`the station of ${station}, with an athlete and with a fault`, async ({ tapeline: { desk } }) => {
    await openDemo(desk);
    await goTo(desk, station);
    await keyFromPaper(desk);
    const waiting = desk.getByRole("region", { name: /Waiting here/ }).getByRole("listitem");
    await waiting.first().getByRole("button").first().click();
    await expect(entryOf(desk).getByRole("button", { name: /^Save the result/ })).toBeVisible();
    await expectForEverybody(desk);
    await entryOf(desk)
      .getByRole("button", { name: /^Save the result/ })
      .click();
    await expect(entryOf(desk).locator("[data-invalid] [slot=errorMessage]").first()).toBeVisible();
    await expectForEverybody(desk);
  });
}

test("corrections and histories over a station", async ({ tapeline: { desk } }) => {
  await openDemo(desk);
  await goTo(desk, "Strength");
  await keyFromPaper(desk);
  for (const name of [/^Correct it: /, /^History of the result/]) {
    await desk.getByRole("button", { name }).first().click();
    await expect(desk.getByRole("dialog")).toBeVisible();
    await expectForEverybody(desk);
    await desk.keyboard.press("Escape");
    await expect(desk.getByRole("dialog")).toBeHidden();
  }
});

test("the athletes, and one of them", async ({ tapeline: { desk } }) => {
  await openDemo(desk);
  await goTo(desk, "Athletes");
  await expect(desk.getByRole("searchbox")).toBeVisible();
  await expectForEverybody(desk);
  await desk.getByRole("main").getByRole("table").getByRole("link").first().click();
  await expect(desk.getByRole("heading", { name: "Consent" })).toBeVisible();
  await expectForEverybody(desk);
});

test("the bundle", async ({ tapeline: { desk } }) => {
  await openDemo(desk);
  await goTo(desk, "Share");
  await expect(desk.getByRole("heading", { name: "Share anonymous results" })).toBeVisible();
  await expect(desk.getByRole("main").getByRole("table").first()).toBeVisible();
  await expectForEverybody(desk);
});

test("the board without a day", async ({ tapeline }) => {
  await expectForEverybody(await tapeline.openBoard());
});

test("the board, scene by scene", async ({ tapeline }) => {
  await openDemo(tapeline.desk);
  const board = await tapeline.openBoard();
  await tapeline.clock.hold();
  await board.reload();
  await expect(board.getByRole("heading", { level: 1 })).toBeVisible();
  for (const _scene of ["newest", "walls", "walls", "floor"]) {
    await expectForEverybody(board);
    await tapeline.clock.pass(15_000);
  }
});

alone("a doubt about what was typed, and one about what a lane did", async ({ tapeline: { desk } }) => {
  await openLive(desk, "endurance", 3);
  await setLanes(desk, 2);
  await gather(desk, countedKeys(desk), 2);
  await startedAgo(desk, "endurance", 70);
  for (let round = 0; round < 3; round += 1) {
    for (const lane of ["1", "2"]) await desk.keyboard.press(lane);
    // A second tap of a lane within two seconds is the same one.
    await desk.waitForTimeout(2_200);
  }
  await expect(laneOf(desk, 1).getByRole("button", { name: /^Yes, it is right/ })).toBeVisible();
  await expectForEverybody(desk);
  await goToPaper(desk, "endurance");
  await key(desk, ["Bib", "3"], ["Time", "145"]);
  await expect(desk.getByRole("alert").filter({ hasText: "No, change it" })).toBeVisible();
  await expectForEverybody(desk);
});

alone("who is who, an import undone, two records made one, a league renamed", async ({ tapeline }) => {
  const { desk } = tapeline;
  await callDoor(desk, "day.create", { sure: true, date: "2026-03-14", title: "Spring testing day" });
  await desk.reload();
  await desk.getByRole("link", { name: "Go to your testing day" }).click();
  const head = "league,name,number,birth_year";
  const list = `${head}\nLantern Bay,Anvil Sparrow,7,1990\nLantern Bay,Brine Kestrel,12,1995\n`;
  await bringSheet(tapeline, "spring.csv", list);
  await desk.getByRole("button", { name: /^Import 2 rows/ }).click();
  await desk.getByRole("button", { name: /another file/ }).click();
  await bringSheet(tapeline, "autumn.csv", `${head}\nLantern Bay Roller Derby,Nova Pike,7,1999\n`);
  await expect(desk.getByRole("button", { name: "Answer 1 question first" })).toBeVisible();
  await expectForEverybody(desk);
  await desk.getByRole("button", { name: "Same league: Lantern Bay" }).click();
  await expect(desk.getByText("Who is Nova Pike", { exact: false })).toBeVisible();
  await expectForEverybody(desk);
  await desk.getByRole("button", { name: "Choose another file" }).click();
  await desk.getByRole("button", { name: /^Undo: Roster, spring\.csv/ }).click();
  await expect(desk.getByRole("button", { name: "Undo it" })).toBeVisible();
  await expectForEverybody(desk);
  await desk.keyboard.press("Escape");
  await goTo(desk, "Athletes");
  await desk.getByRole("combobox", { name: "League" }).selectOption("Lantern Bay");
  await desk.getByRole("button", { name: "Rename or merge this league" }).click();
  await expect(desk.getByRole("button", { name: "Rename it" })).toBeVisible();
  await expectForEverybody(desk);
  await desk.keyboard.press("Escape");
  await desk.getByRole("link", { name: "Anvil Sparrow" }).click();
  await desk.getByRole("button", { name: "Make two records one" }).click();
  await desk.getByRole("searchbox", { name: "Find the other record" }).fill("Brine");
  await expect(desk.getByRole("button", { name: /^Brine Kestrel/ })).toBeVisible();
  await expectForEverybody(desk);
  await desk.getByRole("button", { name: /^Brine Kestrel/ }).click();
  await expect(desk.getByRole("button", { name: "Make them one" })).toBeVisible();
  await expectForEverybody(desk);
});

alone("the plan of a day, and each of its questions with a fault", async ({ tapeline: { desk } }) => {
  await callDoor(desk, "day.create", { sure: true, date: "2026-12-05", title: "Winter testing day" });
  await takeSheet(desk, "roster", roster);
  await desk.evaluate(() => {
    location.hash = "/plan";
  });
  await expect(desk.locator("[data-gains]")).toBeVisible({ timeout: 60_000 });
  await expectForEverybody(desk);
  for (const [asks, field, wrong] of [
    ["Change when the tests begin, and the breaks", "The tests begin at", "soon"],
    ["Change who comes", "Likely to come", "101"],
    ["Change: Vertical leap", "Places", "0"],
    ["Change the judges, the order and the calls", "Judges in the hall", "0"],
    ["Change the rest between two tests", "Minutes of rest", "1"],
  ] as const) {
    await desk.getByRole("button", { name: asks }).press("Enter");
    const dialog = desk.getByRole("alertdialog");
    await dialog.getByRole("textbox", { name: field }).first().fill(wrong);
    await desk.keyboard.press("Enter");
    await expect(dialog.locator("[data-invalid] [slot=errorMessage]").first()).toBeVisible();
    await expectForEverybody(desk);
    await desk.keyboard.press("Escape");
    // The keyboard goes on where it was.
    await expect(desk.getByRole("button", { name: asks })).toBeFocused();
  }
});

test("the papers of the day, each kind of them", async ({ tapeline: { desk } }) => {
  await openDemo(desk);
  await desk.getByRole("link", { name: "Record sheets, bibs and badges" }).click();
  for (const name of ["Record sheets, all five", "Record sheet 4: Staged plank", "Bib numbers", "Badges"]) {
    await desk.getByRole("link", { name, exact: true }).click();
    await expect(desk.locator("article").first()).toBeVisible();
    await expectForEverybody(desk);
  }
});
