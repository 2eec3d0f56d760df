import { readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { expect, type Page } from "@playwright/test";
import { tap, write } from "./by-touch.ts";
import { test } from "./fixture.ts";
import { callDoor } from "./page.ts";
import type { Tapeline } from "./session.ts";
import { answerOpenDialog, answerSaveDialog } from "./sheets.ts";
import { results, roster } from "./twelve.ts";

const button = (desk: Page, name: string | RegExp) => desk.getByRole("button", { name }).first();
const place = (desk: Page, name: string) =>
  desk.getByRole("navigation", { name: "Screens" }).getByRole("link", { name, exact: true });

test("a whole day by touch alone", async ({ tapeline }) => {
  const { desk } = tapeline;
  await test.step("a day of our own", async () => {
    await write(desk, desk.getByRole("textbox", { name: "Name", exact: true }), "Autumn testing day");
    await tap(desk, button(desk, "Create the day"));
    await expect(desk.getByRole("heading", { name: "Overview of the day" })).toBeVisible();
  });
  await test.step("the roster", () => takeIn(tapeline, "roster.csv", roster, 12));
  await test.step("open the day", async () => {
    await tap(desk, place(desk, "Overview"));
    await tap(desk, button(desk, "Open the day"));
    await expect(desk.getByText(/^The day is open/)).toBeVisible();
  });
  await test.step("check in", () => checkIn(desk));
  await test.step("push-ups, live", () => liveStrength(tapeline));
  await test.step("the board, and hiding it", async () => {
    await tap(desk, button(desk, "Open the big screen"));
    const board = await tapeline.openBoard();
    await expect(board.getByRole("heading", { name: "Autumn testing day" })).toBeVisible();
    await tap(desk, button(desk, /Hide the big screen$/));
    await expect(board.getByRole("img", { name: "The big screen is hidden" })).toBeVisible();
  });
  // Each is asked at the table; the others' answers are the roster's here.
  await callDoor(desk, "checkIn.admitAll");
  await test.step("results from paper", () => takeIn(tapeline, "results.csv", results, 11));
  await test.step("close the day", async () => {
    await tap(desk, place(desk, "Overview"));
    await tap(desk, button(desk, "Close the day"));
    await tap(desk, desk.getByRole("alertdialog").getByRole("button", { name: "Close the day" }));
    await expect(desk.getByText(/^The day is closed/)).toBeVisible();
  });
  await test.step("the bundle", () => writeBundle(tapeline));
});

async function takeIn(tapeline: Tapeline, name: string, sheet: string, rows: number): Promise<void> {
  const { desk, folder } = tapeline;
  await writeFile(join(folder, name), sheet);
  await answerOpenDialog(tapeline, join(folder, name));
  await tap(desk, place(desk, "Import"));
  await tap(desk, button(desk, "Choose a file"));
  await expect(desk.getByRole("heading", { name })).toBeVisible();
  await tap(desk, button(desk, `Import ${rows} rows`));
  await expect(desk.getByRole("heading", { name: `${rows} rows imported` })).toBeVisible();
}

async function checkIn(desk: Page): Promise<void> {
  await tap(desk, place(desk, "Check-in"));
  await write(desk, desk.getByRole("combobox", { name: "Who is it?" }), "amber");
  await tap(desk, desk.getByRole("option", { name: "Amber Vole" }));
  await tap(desk, button(desk, "No to all seven"));
  const group = (name: string) => desk.getByRole("radiogroup", { name });
  await tap(
    desk,
    group("“How may the big screen in the hall show you?”").getByText("By name", { exact: true }),
  );
  await tap(
    desk,
    group("“May your results be published without your name, also on the internet?”").getByText("Yes"),
  );
  await tap(desk, button(desk, "Check in · bib 1"));
  const dialog = desk.getByRole("dialog");
  await write(desk, dialog.getByRole("textbox", { name: "Your initials" }), "QA");
  await tap(desk, dialog.getByRole("button").last());
  await expect(desk.getByRole("heading", { name: "Amber Vole is checked in" })).toBeVisible();
}

const lane = (desk: Page) => desk.locator('[data-lane="1"]');

async function liveStrength({ desk, clock }: Tapeline): Promise<void> {
  await tap(desk, place(desk, "Strength"));
  await tap(desk, button(desk, /^Call the next/));
  await clock.hold();
  await tap(desk, button(desk, /^Start 1 lane/));
  await expect(lane(desk)).toHaveAttribute("data-phase", "going");
  // Four beats at 40 a minute, and three reps of two beats each less the most of one.
  await clock.pass(6_000 + 7_000);
  await expect(lane(desk)).toContainText("2 reps");
  await tap(desk, lane(desk).getByRole("button", { name: /Stopped/ }));
  await expect(lane(desk)).toContainText("First result");
  await tap(desk, button(desk, /^Finish this heat/));
  await tap(desk, desk.getByRole("link", { name: "Overview" }));
}

async function writeBundle(tapeline: Tapeline): Promise<void> {
  const { desk, folder } = tapeline;
  const file = join(folder, "bundle.zip");
  await answerSaveDialog(tapeline, file);
  await tap(desk, desk.getByRole("link", { name: "Share results from these days" }));
  await write(desk, desk.getByRole("textbox", { name: "Type “share” to continue" }), "share");
  await tap(desk, button(desk, "Write the file"));
  await expect(desk.getByText("Saved as bundle.zip.")).toBeVisible();
  expect((await readFile(file)).subarray(0, 2).toString()).toBe("PK");
}
