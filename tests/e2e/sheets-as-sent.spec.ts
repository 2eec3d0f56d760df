import { expect } from "@playwright/test";
import { xlsxOf } from "../unit/sheets/workbooks.ts";
import { test } from "./fixture.ts";
import { cutCells, showOn } from "./in-sight.ts";
import { callDoor, goTo } from "./page.ts";
import type { Tapeline } from "./session.ts";
import { bringSheet } from "./sheets.ts";

async function planDay({ desk }: Tapeline): Promise<void> {
  await callDoor(desk, "day.create", { sure: true, date: "2026-03-14", title: "Spring testing day" });
  await desk.reload();
  await desk.getByRole("link", { name: "Go to your testing day" }).click();
}

test("a league's list with a title and no league goes in, its slips put right on the screen", async ({
  tapeline,
}) => {
  const { desk } = tapeline;
  await planDay(tapeline);
  const list =
    "Our skaters 2026\n\n#;Derby name;Born;Gender\n7;Anvil Sparrow;1996;F\n22B;Brine Kestrel;95;NB\n;Total;;\n";
  await bringSheet(tapeline, "our skaters.csv", list);
  await expect(desk.getByRole("combobox", { name: "The headers are in line" })).toHaveValue("3");
  await desk.getByRole("textbox", { name: "All of these are of one league" }).fill("Gravel Moon");
  await desk.getByRole("button", { name: "Use: All of these are of one league" }).click();
  await expect(desk.getByRole("main").getByRole("status")).toContainText("New2");
  await expect(desk.getByText("A skater's number has up to four digits", { exact: false })).toBeVisible();
  await expect(desk.getByText("Write the year of birth alone", { exact: false })).toBeVisible();
  await desk.getByRole("button", { name: "Put it right: line 5" }).click();
  await desk.getByRole("textbox", { name: "#" }).fill("22");
  await desk.getByRole("textbox", { name: "Born" }).fill("1995");
  await desk.getByRole("button", { name: "Try again" }).click();
  await expect(desk.getByRole("main").getByRole("status")).toContainText("New3");
  await desk.getByRole("button", { name: "Don't import line 6" }).click();
  await expect(desk.getByRole("main").getByRole("status")).toContainText("New2");
  await expect(desk.getByRole("heading", { name: "1 row is not imported by choice" })).toBeVisible();
  await desk.getByRole("button", { name: /^(?:Take in|Import) 2 rows/ }).click();
  await expect(desk.getByRole("heading", { name: /^2 rows/ })).toBeVisible();
});

test("a workbook with a column a test goes in as past results of the day that is said", async ({
  tapeline,
}) => {
  const { desk } = tapeline;
  await planDay(tapeline);
  const roster = xlsxOf([
    {
      name: "S",
      rows: [
        ["League", "Name", "No."],
        ["Gravel Moon", "Anvil Sparrow", "007"],
      ],
    },
  ]);
  await bringSheet(tapeline, "roster.xlsx", roster);
  await desk.getByRole("button", { name: /^(?:Take in|Import) 1 row/ }).click();
  await desk.getByRole("button", { name: /another file/ }).click();
  const wide = xlsxOf([
    { name: "Notes", rows: [["Held in the old hall"]] },
    {
      name: "Autumn",
      rows: [
        ["Team", "No.", "Strength", "Plank"],
        ["Gravel Moon", "007", 22, "2:31"],
      ],
    },
  ]);
  await bringSheet(tapeline, "autumn.xlsx", wide);
  await desk.getByRole("combobox", { name: "Worksheet" }).selectOption("Autumn");
  await desk.getByRole("textbox", { name: "All of these are of one day" }).fill("2025-11-08");
  await desk.getByRole("button", { name: "Use: All of these are of one day" }).click();
  // Nothing says which push-ups they were: until somebody does, they wait.
  await expect(desk.getByRole("main").getByRole("status")).toContainText("New1");
  await desk
    .getByRole("radiogroup", { name: "Where “Variant” is blank, it is" })
    .getByText("full", { exact: true })
    .click();
  await expect(desk.getByRole("main").getByRole("status")).toContainText("New2");
  await desk.getByRole("button", { name: /^(?:Take in|Import) 2 rows/ }).click();
  await expect(desk.getByRole("heading", { name: /^2 rows/ })).toBeVisible();
});

test("putting a row right begins in the field that is wrong, in a list and in a sheet with a column a test", async ({
  tapeline,
}) => {
  const { desk } = tapeline;
  await planDay(tapeline);
  await bringSheet(
    tapeline,
    "list.csv",
    "Team,#,Derby name,Born\nGravel Moon,7,Anvil Sparrow,1996\nGravel Moon,8,Brine Kestrel,95\n",
  );
  await desk.getByRole("button", { name: "Put it right: line 3" }).click();
  await expect(desk.getByRole("textbox", { name: "Born" })).toBeFocused();
  await desk.getByRole("button", { name: "Cancel" }).click();
  await desk.getByRole("button", { name: "Import 1 row" }).click();
  await desk.getByRole("button", { name: "Import another file" }).click();
  await bringSheet(
    tapeline,
    "before.csv",
    "Team,No.,Strength (full) 2025-11-08,Plank 2025-11-08\nGravel Moon,7,22,long\nGravel Moon,9,20,2:31\n",
  );
  await desk.getByRole("button", { name: "Put it right: line 2" }).click();
  await expect(desk.getByRole("textbox", { name: "Plank 2025-11-08" })).toBeFocused();
});

test("dates, numbers and results are whole where they are looked at before they are imported, and in the list", async ({
  tapeline,
}) => {
  const { desk } = tapeline;
  await planDay(tapeline);
  await showOn(desk, { width: 1280, height: 800, scale: 1 });
  await bringSheet(
    tapeline,
    "list.csv",
    "Team,#,Derby name,Born,Gender,Guardian's consent\nGravel Moon,1984,Anvil Sparrow,14/03/1996,F,yes\n",
  );
  await expect(desk.getByRole("button", { name: "Import 1 row" })).toBeVisible();
  expect(await cutCells(desk)).toEqual([]);
  await desk.getByRole("button", { name: "Import 1 row" }).click();
  await desk.getByRole("button", { name: "Import another file" }).click();
  await goTo(desk, "Athletes");
  await expect(desk.getByRole("cell", { name: "1984" })).toBeVisible();
  expect(await cutCells(desk)).toEqual([]);
});
