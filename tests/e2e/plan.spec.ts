import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { expect, type Page } from "@playwright/test";
import { expectForEverybody } from "./axe.ts";
import { answerSave } from "./cards-day.ts";
import { englishOn } from "./english.ts";
import { test } from "./fixture.ts";
import { callDoor, goTo } from "./page.ts";
import { readPdf } from "./pdf.ts";
import { answerSaveDialog, roster, takeSheet } from "./sheets.ts";

/** Ms that a plan of a small hall may take on a busy machine. */
const longest = { timeout: 60_000 };

async function plannedDay(desk: Page): Promise<void> {
  const day = { sure: true, date: "2026-12-05", title: "Lantern Bay" };
  await callDoor(desk, "day.create", day);
}

async function openPlan(desk: Page): Promise<void> {
  await desk.reload();
  await desk.evaluate(() => {
    location.hash = "/day";
  });
  await desk.getByRole("link", { name: "Plan the day" }).click();
  await expect(desk.getByRole("heading", { level: 1, name: "Plan for the day" })).toBeVisible();
}

/** The times between which the day is done, as the screen shows them, in minutes after midnight. */
async function doneBetween(desk: Page): Promise<readonly number[]> {
  const shown = desk.getByText(/^\d\d:\d\d and \d\d:\d\d$/).first();
  await expect(shown).toBeVisible(longest);
  const [from = "", until = ""] = ((await shown.textContent()) ?? "").split(" and ");
  return [from, until].map((time) => Number(time.slice(0, 2)) * 60 + Number(time.slice(3)));
}

test("the evening before: the end without typing anything, what one more brings, a change, and the timetable", async ({
  tapeline,
}) => {
  const { desk, folder } = tapeline;
  const refused: string[] = [];
  desk.on("console", (message) => {
    if (/Content Security Policy|Refused to|Trusted/.test(message.text())) refused.push(message.text());
  });
  await plannedDay(desk);
  await takeSheet(desk, "roster", roster);
  await openPlan(desk);

  const [from = 0, until = 0] = await doneBetween(desk);
  expect(from).toBeGreaterThan(9 * 60);
  expect(until).toBeGreaterThanOrEqual(from);
  await expect(desk.getByText("What holds the day up", { exact: true })).toBeVisible();
  const stations = desk.getByRole("region", { name: "The stations over the day" });
  await expect(stations.getByRole("listitem").filter({ hasText: /queue/ })).toHaveCount(5);
  await expect(desk.locator("[data-gains]")).toBeVisible(longest);
  await expectForEverybody(desk);
  expect(await desk.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);

  // Twice as long at the circuit is later, for everybody who looks again.
  await desk.getByRole("button", { name: "Change: Circuit" }).click();
  const dialog = desk.getByRole("alertdialog", { name: "Circuit" });
  await dialog.getByRole("textbox", { name: "A turn" }).fill("later");
  await desk.keyboard.press("Enter");
  await expect(dialog.getByText("Write a time, such as 2:30.")).toBeVisible();
  await expectForEverybody(desk);
  await dialog.getByRole("textbox", { name: "A turn" }).fill("30:00");
  await desk.keyboard.press("Enter");
  await expect(dialog).toBeHidden();
  await expect(desk.getByText("30:00 a turn", { exact: false })).toBeVisible();
  await expect.poll(async () => (await doneBetween(desk))[0], longest).toBeGreaterThan(from + 20);
  await expect(desk.locator("[data-gains]")).toBeVisible(longest);
  // More room where it is slowest is what helps most.
  await expect(desk.locator("[data-gains]").getByRole("listitem").first()).toContainText("the circuit");

  const waves = desk.getByRole("region", { name: "Timetable" }).last();
  await expect(waves.getByRole("row", { name: /^Gravel Moon/ })).toContainText("09:00");
  await expect(waves.getByRole("columnheader").last()).toHaveText("The last is done");
  const pdf = join(folder, "timetable.pdf");
  await answerSave(tapeline.app, pdf);
  await desk.getByRole("button", { name: "Save as PDF" }).click();
  await expect(desk.getByText("Saved as timetable.pdf.")).toBeVisible();
  const offered = await tapeline.app.evaluate(() => Reflect.get(globalThis, "askedFor"));
  expect(offered).toBe("Timetable 2026-12-05 A4.pdf");
  const pages = await readPdf(pdf);
  expect(pages).toHaveLength(1);
  expect(pages[0]?.text).toContain("Tin Harbour");
  expect(pages[0]?.text).toContain("Lantern Bay");
  expect(pages[0]?.text).toContain("when its last one is done with all five");
  // It goes to leagues: no names of athletes.
  expect(pages[0]?.text).not.toMatch(/Sparrow|Kestrel|Dunlin/);

  const csv = join(folder, "timetable.csv");
  await answerSaveDialog(tapeline, csv);
  await desk.getByRole("button", { name: "Save with names (CSV)" }).click();
  await expect(desk.getByText("Saved as timetable.csv.")).toBeVisible();
  expect(await readFile(csv, "utf8")).toContain("Anvil Sparrow");

  await callDoor(desk, "language.choose", { language: "es" });
  await expect(desk.getByRole("heading", { level: 1, name: "Plan de la jornada" })).toBeVisible();
  expect(await englishOn(desk)).toEqual([]);
  expect(refused).toEqual([]);
});

test("nobody is on the list yet: how many come is written, and a plan is worked out and stopped", async ({
  tapeline: { desk },
}) => {
  await plannedDay(desk);
  await openPlan(desk);
  await expect(desk.getByText("Nobody is on the list yet.")).toBeVisible();
  await expectForEverybody(desk);
  await desk.getByRole("button", { name: "Write how many come" }).click();
  const dialog = desk.getByRole("alertdialog", { name: "Who comes" });
  await dialog.getByRole("textbox", { name: "League" }).fill("Gravel Moon");
  await desk.keyboard.press("Enter");
  await expect(dialog.getByText("Write a whole number from 0 to 400.")).toBeVisible();
  await expectForEverybody(desk);
  await dialog.getByRole("textbox", { name: "Athletes" }).fill("200");
  await dialog.getByRole("textbox", { name: "Until" }).fill("8");
  await desk.keyboard.press("Enter");
  await expect(dialog.getByRole("alert").filter({ hasText: "Gravel Moon can't have arrived" })).toBeVisible();
  await dialog.getByRole("textbox", { name: "Until" }).fill("10.30");
  await desk.keyboard.press("Enter");
  await expect(desk.getByText("1 league, 09:00–10:30")).toBeVisible();
  await doneBetween(desk);

  const changes = desk.getByRole("region", { name: "What one more would bring" });
  await changes.getByRole("button", { name: "Stop" }).click(longest);
  await expect(changes.getByText("Stopped before it was finished.")).toBeVisible();
  await expectForEverybody(desk);
  await changes.getByRole("button", { name: "Work it out" }).click();
  await expect(changes.getByRole("progressbar")).toBeVisible();
});

test("three leagues are more than the box shows: what is refused is seen all the same", async ({
  tapeline: { desk },
}) => {
  await plannedDay(desk);
  await openPlan(desk);
  await desk.getByRole("button", { name: "Write how many come" }).click();
  const dialog = desk.getByRole("alertdialog", { name: "Who comes" });
  const field = (name: string) => dialog.getByRole("textbox", { name }).last();
  for (const [at, league] of ["Gravel Moon", "Tin Harbour", "Slow Ferry", "Long Jetty"].entries()) {
    if (at > 0) await dialog.getByRole("button", { name: "Add a league" }).click();
    await expect(field("League")).toBeFocused();
    await field("League").fill(league);
    await field("Athletes").fill("10");
  }
  await field("Likely to come").fill("hal");
  await dialog.getByRole("textbox", { name: "League" }).first().focus();
  await dialog.getByRole("button", { name: "Save" }).click();
  await expect(field("Likely to come")).toBeFocused();
  await expect(dialog.getByText("Write a whole number from 0 to 100.")).toBeInViewport();
  await field("Likely to come").fill("50");
  // All together still, until another time is written.
  await field("Arrive from").fill("9:30");
  await expect(field("Arrive until")).toHaveValue("9:30");
  await field("Arrive until").fill("9:00");
  await dialog.getByRole("textbox", { name: "League" }).first().focus();
  await dialog.getByRole("button", { name: "Save" }).click();
  await expect(dialog.getByText(/^Long Jetty can't have arrived/)).toBeInViewport();
  await field("Arrive until").fill("10");
  await desk.keyboard.press("Enter");
  await expect(desk.getByText("Long Jetty: 10 (50 %), 09:30–10:00")).toBeVisible();
  await desk.getByRole("button", { name: "Change when the tests begin, and the breaks" }).click();
  await desk.getByRole("button", { name: "Add a break" }).click();
  await expect(desk.getByRole("textbox", { name: "From" })).toBeFocused();
  await desk.keyboard.type("11");
  await desk.keyboard.press("Tab");
  await desk.keyboard.type("11:20");
  await desk.keyboard.press("Enter");
  await expect(desk.getByText("Break from 11:00 to 11:20")).toBeVisible();
});

test("better times for the leagues are used with one key, and the timetable has them", async ({
  tapeline: { desk },
}) => {
  await plannedDay(desk);
  await takeSheet(desk, "roster", roster);
  await openPlan(desk);
  const before = await doneBetween(desk);
  await desk.getByRole("button", { name: "Change who comes" }).click();
  const league = desk.getByRole("alertdialog", { name: "Who comes" }).getByRole("group", { name: /^Tin / });
  await league.getByRole("textbox", { name: "Arrive from" }).fill("12");
  await league.getByRole("textbox", { name: "Arrive until" }).fill("12");
  await desk.keyboard.press("Enter");
  await expect.poll(async () => (await doneBetween(desk))[0], longest).toBeGreaterThan((before[0] ?? 0) + 60);

  const gains = desk.locator("[data-gains]");
  const line = gains
    .getByRole("listitem")
    .filter({ has: desk.getByRole("button", { name: "Use these times" }) });
  await expect(line).toContainText(/The day ends \d+ minutes earlier\./, longest);
  await expect(line).toContainText("Gravel Moon at 09:00");
  const [, time = ""] = /Tin Harbour at (\d\d:\d\d)/.exec((await line.textContent()) ?? "") ?? [];
  expect(time).toMatch(/^(?:09|10):\d[05]$/);
  await line.getByRole("button", { name: "Use these times" }).click();
  const asked = desk.getByRole("alertdialog", { name: "Use these times?" });
  await expect(asked.getByText(`Tin Harbour: at ${time} instead of at 12:00`)).toBeVisible();
  await expect(asked.getByText("Gravel Moon: at 09:00, as before")).toBeVisible();
  await expectForEverybody(desk);
  await asked.getByRole("button", { name: "Save" }).click();
  await expect(asked).toBeHidden();
  const row = desk
    .getByRole("region", { name: "Timetable" })
    .last()
    .getByRole("row", { name: /^Tin Harbour/ });
  await expect(row.getByRole("cell").nth(1)).toHaveText(time, longest);
  await expect.poll(async () => (await doneBetween(desk))[1], longest).toBeLessThan((before[1] ?? 0) + 60);
  await expect(gains).toBeVisible(longest);
  await expect(line).toHaveCount(0);
});

test("on an open day the plan of before is shown, and what counts for the rest can still be changed", async ({
  tapeline: { desk },
}) => {
  await plannedDay(desk);
  await takeSheet(desk, "roster", roster);
  await openPlan(desk);
  const before = await doneBetween(desk);
  await callDoor(desk, "day.open", { sure: true });
  await desk.reload();
  await goTo(desk, "Overview");
  await desk.getByRole("link", { name: "The plan for the day" }).click();
  await expect(desk.getByText(/^As it was planned before the day, for 16 athletes/)).toBeVisible();
  expect(await doneBetween(desk)).toEqual(before);
  await desk.getByRole("button", { name: "Change the judges, the order and the calls" }).click();
  await desk.getByRole("textbox", { name: "Judges in the hall" }).fill("4");
  await desk.keyboard.press("Enter");
  await expect(desk.getByText("4 judges")).toBeVisible();
  expect(await doneBetween(desk)).toEqual(before);
  await expectForEverybody(desk);
});
