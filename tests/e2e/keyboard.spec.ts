import { readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { expect, type Page } from "@playwright/test";
import { choose, enterAt, tabTo } from "./by-keyboard.ts";
import { test } from "./fixture.ts";
import { callDoor } from "./page.ts";
import type { Tapeline } from "./session.ts";
import { answerOpenDialog, answerSaveDialog } from "./sheets.ts";
import { results, roster } from "./twelve.ts";

test("a whole day by the keyboard alone", async ({ tapeline }) => {
  const { desk } = tapeline;
  await test.step("a day of our own", async () => {
    await tabTo(desk, /^Name/);
    await desk.keyboard.type("Autumn testing day");
    await desk.keyboard.press("Enter");
    await expect(desk.getByRole("heading", { name: "Overview of the day" })).toBeVisible();
  });
  await test.step("the roster", () => takeIn(tapeline, "roster.csv", roster, 12));
  await test.step("open the day", async () => {
    await desk.keyboard.press("Alt+0");
    await expect(desk.getByText("12 people are on the list.")).toBeVisible();
    await enterAt(desk, /^Open the day/);
    await expect(desk.getByText(/^The day is open/)).toBeVisible();
  });
  await test.step("check in", () => checkIn(desk));
  await test.step("push-ups, live", () => liveStrength(tapeline));
  await test.step("the quadrant jump from paper", () => agilityFromPaper(desk));
  await test.step("the board", async () => {
    await enterAt(desk, /^Open the big screen/);
    const board = await tapeline.openBoard();
    await expect(board.getByRole("heading", { name: "Autumn testing day" })).toBeVisible();
    await desk.bringToFront();
  });
  // Each is asked at the table; the others' answers are the roster's here.
  await callDoor(desk, "checkIn.admitAll");
  await test.step("results from paper", () => takeIn(tapeline, "results.csv", results, 11));
  await test.step("close the day", async () => {
    await desk.keyboard.press("Alt+0");
    await enterAt(desk, /^Close the day/);
    await expect(desk.getByRole("alertdialog")).toBeVisible();
    await enterAt(desk, /^Close the day/);
    await expect(desk.getByText(/^The day is closed/)).toBeVisible();
  });
  await test.step("the bundle", () => writeBundle(tapeline));
});

async function takeIn(tapeline: Tapeline, name: string, sheet: string, rows: number): Promise<void> {
  const { desk, folder } = tapeline;
  await writeFile(join(folder, name), sheet);
  await answerOpenDialog(tapeline, join(folder, name));
  await desk.keyboard.press("Alt+1");
  await expect(desk.getByRole("button", { name: "Choose a file" })).toBeVisible();
  await enterAt(desk, /^Choose a file/);
  await expect(desk.getByRole("heading", { name })).toBeVisible();
  await enterAt(desk, new RegExp(`^Import ${rows} rows`));
  await expect(desk.getByRole("heading", { name: `${rows} rows imported` })).toBeVisible();
}

async function checkIn(desk: Page): Promise<void> {
  await desk.keyboard.press("Alt+2");
  await expect(desk.getByRole("combobox", { name: "Who is it?" })).toBeFocused();
  await desk.keyboard.type("amber");
  await expect(desk.getByRole("option", { name: "Amber Vole" })).toBeVisible();
  await desk.keyboard.press("Enter");
  await expect(desk.getByRole("group", { name: "“Does any of this apply to you?”" })).toBeFocused();
  await desk.keyboard.press("Tab");
  await expect(desk.getByRole("button", { name: "No to all seven" })).toBeFocused();
  await desk.keyboard.press("Enter");
  await choose(desk, /^(Not at all|By bib only|By name)$/, /^By name$/);
  await choose(desk, /^(No|Yes)$/, /^Yes$/);
  await desk.keyboard.press("Control+Enter");
  await expect(desk.getByRole("textbox", { name: "Your initials" })).toBeFocused();
  await desk.keyboard.type("QA");
  await desk.keyboard.press("Enter");
  await expect(desk.getByRole("heading", { name: "Amber Vole is checked in" })).toBeVisible();
}

/** Called, counted in, and stopped in the third cadence. */
async function liveStrength({ desk, clock }: Tapeline): Promise<void> {
  await desk.keyboard.press("Alt+3");
  await expect(desk.getByRole("button", { name: /^Call the next/ })).toBeVisible();
  await desk.keyboard.press("n");
  await expect(desk.getByRole("button", { name: /^Start 1 lane/ })).toBeVisible();
  await clock.hold();
  await desk.keyboard.press("Space");
  await expect(desk.locator('[data-lane="1"]')).toHaveAttribute("data-phase", "going");
  // Four beats at 40 a minute, and three reps of two beats each less the most of one.
  await clock.pass(6_000 + 7_000);
  await expect(desk.locator('[data-lane="1"]')).toContainText("2 reps");
  await desk.keyboard.press("Shift+Digit1");
  await expect(desk.locator('[data-lane="1"]')).toContainText("First result");
}

/** Both directions of the quadrant jump: the bib, then the direction that is next, laps, quadrants and touches. */
async function agilityFromPaper(desk: Page): Promise<void> {
  await desk.keyboard.press("Alt+4");
  await expect(desk.getByRole("button", { name: /^Call the next/ })).toBeVisible();
  await desk.keyboard.press("Alt+L");
  const entry = desk.getByRole("region", { name: "Enter a result" });
  for (const [laps, extra, touches] of [
    ["7", "3", "2"],
    ["7", "1", "0"],
  ] as const) {
    await expect(entry.getByRole("textbox", { name: "Bib", exact: true })).toBeFocused();
    await desk.keyboard.type("1");
    await desk.keyboard.press("Enter");
    for (const [field, value] of [
      [/^Full laps/, laps],
      [/^Extra/, extra],
      [/^Line touches/, touches],
    ] as const) {
      await expect(entry.getByRole("textbox", { name: field })).toBeFocused();
      await desk.keyboard.type(value);
      await desk.keyboard.press("Enter");
    }
  }
  // 4 × 7 + 3 − 2 × 0.5 = 30 and 4 × 7 + 1 = 29: 29.5.
  await expect(desk.getByText("29.5").first()).toBeVisible();
}

async function writeBundle(tapeline: Tapeline): Promise<void> {
  const { desk, folder } = tapeline;
  const file = join(folder, "bundle.zip");
  await answerSaveDialog(tapeline, file);
  await enterAt(desk, /^Share results from these days/);
  await tabTo(desk, /^Type “share” to continue/);
  await desk.keyboard.type("share");
  await desk.keyboard.press("Enter");
  await expect(desk.getByText("Saved as bundle.zip.")).toBeVisible();
  expect((await readFile(file)).subarray(0, 2).toString()).toBe("PK");
}
