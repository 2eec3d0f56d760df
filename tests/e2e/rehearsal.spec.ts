import { readdir, readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { expect, type Page } from "@playwright/test";
import { expectForEverybody } from "./axe.ts";
import { test } from "./fixture.ts";
import { callDoor } from "./page.ts";
import type { Tapeline } from "./session.ts";
import { answerOpenDialog, answerSaveDialog } from "./sheets.ts";

const roster = `league,name,number,birth_year,category,board,share
Foundry Town,Ash Velvet,7,1994,women,name,yes
Foundry Town,Briar Knox,8,19x6,open,bib,yes
Quarry Lane,Cinder Rue,9,2012,women,name,no
`;
const past = `league,number,date,test,variant,mark
Foundry Town,7,2026-02-01,push-up,full,20
`;
const results = `league,number,test,variant,reps,off_at_end
Foundry Town,7,push-up,full,24,0
Foundry Town,8,push-up,full,19,0
`;

async function choose(tapeline: Tapeline, kind: string, name: string, content: string): Promise<void> {
  const { desk, folder } = tapeline;
  await writeFile(join(folder, name), content);
  await answerOpenDialog(tapeline, join(folder, name));
  await desk.getByRole("button", { name: new RegExp(`^Choose (the|another) file: ${kind}$`) }).click();
  await expect(desk.getByText(name, { exact: true }).first()).toBeVisible();
}

/** Lets a file fall on the place of a sheet, as somebody who drags it there. */
async function drop(desk: Page, kind: string, name: string, content: string): Promise<void> {
  const files = await desk.evaluateHandle(
    ([called, text]) => {
      const transfer = new DataTransfer();
      transfer.items.add(new File([text], called, { type: "text/csv" }));
      return transfer;
    },
    [name, content] as const,
  );
  const place = desk.getByRole("heading", { level: 2, name: new RegExp(`^${kind} `) });
  await place.dispatchEvent("drop", { dataTransfer: files });
  await expect(desk.getByText(name, { exact: true }).first()).toBeVisible();
}

test("the evening before, a whole day is tried with the leagues' sheets, and nothing of the own day changes", async ({
  tapeline,
}) => {
  const { desk, folder } = tapeline;
  await callDoor(desk, "day.create", { sure: true, date: "2026-11-14", title: "Autumn testing day" });
  await desk.reload();
  await desk.getByRole("link", { name: "Go to your testing day" }).click();
  await desk.getByRole("link", { name: "Rehearse with these files" }).click();
  await expect(desk.getByRole("heading", { level: 1, name: "Rehearsal" })).toBeVisible();
  await expectForEverybody(desk);

  await choose(tapeline, "Roster", "club.csv", "Crew,Who\nGravel Moon,Anvil\n");
  await desk.getByRole("button", { name: "Rehearse the day" }).click();
  await expect(desk.getByRole("alert")).toContainText("The roster can't be used");
  await expect(desk.getByRole("alert")).toContainText("Say below where the headers are");
  await expectForEverybody(desk);
  // What is said below rehearses again: the headers are in line 1 as they are, and only the league is missing.
  await desk.getByRole("button", { name: "Remove the file: Roster" }).click();
  await choose(tapeline, "Roster", "gravel.csv", "Gravel Moon, ours\n\n#,Derby name\n4,Anvil Row\n");
  await desk.getByRole("button", { name: "Rehearse the day" }).click();
  const said = desk.getByRole("region", { name: "How the file was read: Roster, gravel.csv" });
  await said.getByRole("textbox").fill("Gravel Moon");
  await said.getByRole("textbox").press("Enter");
  await expect(desk.getByRole("main")).toContainText("Roster: 1 row imported.");
  await expect(desk.getByRole("main")).toContainText("6 made-up attempts, because there was no file");
  await expectForEverybody(desk);

  await choose(tapeline, "Roster", "roster.csv", roster);
  await expect(desk.getByRole("alert")).toBeHidden();
  await drop(desk, "Past results", "past.csv", past);
  await drop(desk, "Results", "results.csv", results);
  await desk.getByRole("button", { name: "Rehearse the day" }).click();
  await expect(desk.getByRole("heading", { name: "Result", exact: true })).toBeInViewport();
  const main = desk.getByRole("main");
  await expect(main).toContainText("2 rows would not be imported.");
  // Two leagues, a file each.
  await expect(main).toContainText("Roster: 1 row imported. gravel.csv");
  await expect(main).toContainText("Roster: 2 rows imported. roster.csv");
  await expect(main.getByRole("region", { name: "Roster: 1 row not imported" }).first()).toContainText(
    "19x6",
  );
  await expect(main).toContainText("1 athlete needs a guardian's consent");
  await expectForEverybody(desk);

  await answerSaveDialog(tapeline, join(folder, "kept-back.csv"));
  await desk.getByRole("button", { name: "Save the rows not imported" }).click();
  await expect(desk.getByText("kept-back.csv is saved.")).toBeVisible();
  const saved = await readFile(join(folder, "kept-back.csv"), "utf8");
  expect(saved).toContain("roster,3,");
  expect(saved).toContain("results,3,");

  await desk.getByRole("link", { name: "Back to the overview" }).click();
  await expect(main).toContainText("Next: import the rosters.");
  expect(await readdir(join(folder, "rehearsals"))).toEqual([]);
});
