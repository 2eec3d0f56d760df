import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { expect, type Page } from "@playwright/test";
import { expectBundle, leaves, smallestGroup, stays } from "./bundle-file.ts";
import { test } from "./fixture.ts";
import { expectNeverShown, throughAllScenes, watchBoard } from "./hall.ts";
import {
  changeBoardConsent,
  correctStrength,
  keyAgility,
  keyCore,
  keyEndurance,
  keyPower,
  keyStrength,
  skipStrength,
} from "./keyed.ts";
import { goTo } from "./page.ts";
import * as people from "./people.ts";
import type { Tapeline } from "./session.ts";
import { answerSaveDialog, pastResults, results, roster, takeIn } from "./sheets.ts";

test("a whole testing day, from the leagues' sheets to a board and a bundle", async ({ tapeline }) => {
  const { desk } = tapeline;
  await test.step("start a day of our own", () => startDay(desk));
  await test.step("take in the roster and the past results", async () => {
    // 16 rows are new; the one with a number of five digits stays outside.
    await takeIn(tapeline, "roster.csv", roster, { isNew: 16, keptBack: 1 });
    await takeIn(tapeline, "past.csv", pastResults, { isNew: 10, keptBack: 0 });
  });
  await test.step("open the day", () => openDay(desk));
  await test.step("check in", () => checkIn(desk));
  const board = await test.step("open the board", () => openBoard(tapeline));
  await test.step("key at the five stations", () => keyAttempts(desk, board));
  await test.step("take in the results that were kept on paper", () =>
    takeIn(tapeline, "results.csv", results, { isNew: 32, keptBack: 0 }));
  await test.step("the overview has it all", () => lookAtDay(desk));
  await test.step("the board follows what an athlete agrees to", () => changeConsent(tapeline, board));
  await test.step("nobody hidden is in any scene of the board", async () => {
    await throughAllScenes(board, tapeline.clock);
    await expectNeverShown(board, "Ember", people.bibs.ember);
  });
  await test.step("close the day", () => closeDay(desk));
  await test.step("write the bundle and open it", () => writeBundle(tapeline));
  expect(await tapeline.blocked()).toMatchObject({ count: 0 });
});

async function startDay(desk: Page): Promise<void> {
  await desk.getByRole("button", { name: "Create the day" }).click();
  await expect(desk.getByText("Give it a name people will recognise.")).toBeVisible();
  await desk.getByRole("textbox", { name: "Name" }).fill(people.day.title);
  await desk.getByLabel("Date").fill(people.day.date);
  await desk.getByRole("button", { name: "Create the day" }).click();
  await desk.getByRole("button", { name: "Yes, that date" }).click();
  await expect(desk.getByRole("heading", { name: "Overview of the day" })).toBeVisible();
}

async function openDay(desk: Page): Promise<void> {
  await goTo(desk, "Overview");
  await expect(desk.getByText("16 people are on the list.")).toBeVisible();
  await desk.getByRole("button", { name: "Open the day" }).click();
  await desk.getByRole("button", { name: "Open it today" }).click();
  await expect(desk.getByText("The day is open. The test settings are fixed from now on.")).toBeVisible();
}

async function checkIn(desk: Page): Promise<void> {
  await test.step("with a typo", () => people.checkInWithTypo(desk));
  await test.step("a minor, with a guardian's consent", () => people.checkInMinor(desk));
  await test.step("a yes that matters, and a station left out", () => people.checkInWithWorry(desk));
  await test.step("a number that two leagues have; not on the board", () => people.checkInHidden(desk));
  await test.step("a walk-up", () => people.checkInWalkUp(desk));
  await test.step("undone", () => people.undoCheckIn(desk));
  await test.step("a no-show", () => people.markNoShow(desk));
  await test.step("everybody else", () => people.checkInTheRest(desk));
}

async function openBoard(tapeline: Tapeline): Promise<Page> {
  await tapeline.desk.getByRole("button", { name: "Open the big screen" }).click();
  const board = await tapeline.openBoard();
  await expect(board.getByText("The first results of the day appear here")).toBeVisible();
  await watchBoard(board);
  return board;
}

async function keyAttempts(desk: Page, board: Page): Promise<void> {
  await test.step("strength", () => keyStrength(desk));
  await test.step("a best is on the board at once", async () => {
    await expect(board.getByText("Anvil Sparrow").first()).toBeVisible();
    await expect(board.getByText("+2").first()).toBeVisible();
  });
  await test.step("a correction", () => correctStrength(desk));
  await test.step("a skip", () => skipStrength(desk));
  await test.step("agility", () => keyAgility(desk));
  await test.step("power", () => keyPower(desk));
  await test.step("core", () => keyCore(desk));
  await test.step("endurance", () => keyEndurance(desk));
  await expect(board.getByText("7.5", { exact: true }).first()).toBeVisible();
}

/**
 * Bests: five of Anvil Sparrow, and one each of Ember Dunlin (22 after 20), Dusk Heron (18 after 16) and Hollow Bell (30
 * after 28); Brine Kestrel's 25 is equal and Cinder Plover's 17 below. No race is run twice: of 35 marks 3 are not
 * complete and 10 compare with one before, so that 22 are first marks.
 */
async function lookAtDay(desk: Page): Promise<void> {
  await goTo(desk, "Overview");
  await expect(desk.getByRole("main")).toContainText("PBs today8and 22 first results");
}

async function changeConsent({ desk, clock }: Tapeline, board: Page): Promise<void> {
  await goTo(desk, "Athletes");
  await desk.getByRole("searchbox").fill("dusk");
  await desk.getByRole("link", { name: "Dusk Heron" }).click();
  await expectNeverShown(board, "Ember", people.bibs.ember);
  // From the first scene on, which has the newest bests: enough time for what follows.
  await clock.hold();
  await board.reload();
  await expect(board.getByText("Dusk Heron").first()).toBeVisible();
  await watchBoard(board);
  await changeBoardConsent(desk, "By bib only");
  await expect(board.getByText(`bib ${people.bibs.dusk}`).first()).toBeVisible();
  await expect(board.getByText("Dusk Heron")).toHaveCount(0);
  await changeBoardConsent(desk, "Not at all");
  await expect(board.getByText(`bib ${people.bibs.dusk}`)).toHaveCount(0);
  await expect(board.getByText("Hollow Bell").first()).toBeVisible();
}

async function closeDay(desk: Page): Promise<void> {
  await goTo(desk, "Overview");
  await desk.getByRole("button", { name: "Close the day" }).click();
  const question = desk.getByRole("alertdialog", { name: "Close the day?" });
  await question.getByRole("button", { name: "Close the day" }).click();
  await expect(desk.getByText("The day is closed. Everything that was entered is saved.")).toBeVisible();
  await expect(desk.getByRole("heading", { name: "Earlier days" })).toBeVisible();
}

async function writeBundle(tapeline: Tapeline): Promise<void> {
  const { desk, folder } = tapeline;
  await desk.getByRole("link", { name: "Share results from these days" }).click();
  const held = stays.noShare + stays.notComplete + stays.leftAlone + stays.tooFew;
  await expect(desk.getByRole("main")).toContainText(`Included${leaves.length} resultsof 10 athletes`);
  await expect(desk.getByRole("main")).toContainText(`Not included${held} results`);
  await expect(desk.getByRole("main")).toContainText(`Smallest group${smallestGroup} athletes`);
  const word = desk.getByRole("textbox", { name: "Type “share” to continue" });
  const write = desk.getByRole("button", { name: "Write the file" });
  await word.fill("shrae");
  await write.click();
  await expect(desk.getByText("so that nothing is shared by accident")).toBeVisible();
  await expect(word).toHaveValue("shrae");
  const file = join(folder, "bundle.zip");
  await answerSaveDialog(tapeline, file);
  await word.fill("share");
  await word.press("Enter");
  await expect(desk.getByText("Saved as bundle.zip.")).toBeVisible();
  expectBundle(new Uint8Array(await readFile(file)));
}
