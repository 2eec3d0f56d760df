import { expect, type Page } from "@playwright/test";
import { test } from "./fixture.ts";
import { showOn } from "./in-sight.ts";
import { callDoor, goTo } from "./page.ts";
import type { Tapeline } from "./session.ts";
import { bringSheet } from "./sheets.ts";

async function planDay(desk: Page): Promise<void> {
  await callDoor(desk, "day.create", { sure: true, date: "2026-03-14", title: "Spring testing day" });
  await desk.reload();
  await desk.getByRole("link", { name: "Go to your testing day" }).click();
}

async function sayInitials(desk: Page): Promise<void> {
  const dialog = desk.getByRole("dialog", { name: "Who is at this laptop?" });
  await dialog.getByRole("textbox").fill("QA");
  await dialog.getByRole("textbox").press("Enter");
}

const first =
  "league,name,number,birth_year\nLantern Bay,Anvil Sparrow,7,1990\nLantern Bay,Brine Kestrel,12,1995\n";
const second =
  "league,name,number,birth_year\nLantern Bay Roller Derby,Nova Pike,7,1999\nLantern Bay Roller Derby,Brine Kestrel,21,1995\n";

test("who is who is asked row by row, an import is undone, and two records become one and two again", async ({
  tapeline,
}) => {
  const { desk } = tapeline;
  await planDay(desk);
  await bringSheet(tapeline, "spring.csv", first);
  await desk.getByRole("button", { name: /^Import 2 rows/ }).click();
  await desk.getByRole("button", { name: /another file/ }).click();

  await bringSheet(tapeline, "autumn.csv", second);
  // The league first, once for both rows; the button that imports waits.
  await expect(desk.getByRole("button", { name: "Answer 1 question first" })).toBeDisabled();
  await desk.getByRole("button", { name: "Same league: Lantern Bay" }).click();
  await expect(desk.getByRole("button", { name: "Answer 2 questions first" })).toBeDisabled();
  await expect(desk.getByText("Who is Nova Pike", { exact: false })).toBeVisible();
  await desk.getByRole("button", { name: "Another person, new here" }).first().click();
  await expect(desk.getByRole("button", { name: "Answer 1 question first" })).toBeDisabled();
  await desk.getByRole("button", { name: /^Same person: Brine Kestrel/ }).click();
  await expect(desk.getByText("keeps all results and has no number now", { exact: false })).toBeVisible();
  await desk.getByRole("button", { name: /^Import 2 rows/ }).click();
  await expect(desk.getByRole("heading", { name: /^2 rows/ })).toBeVisible();

  // Undone as a whole: nobody new, and the numbers of before.
  await desk.getByRole("button", { name: /^Undo: Roster, autumn\.csv/ }).click();
  await desk.getByRole("button", { name: "Undo it" }).click();
  await sayInitials(desk);
  await expect(desk.getByText("Undone by QA", { exact: false })).toBeVisible();
  await goTo(desk, "Athletes");
  await expect(desk.getByRole("row")).toContainText(["No.", "7", "12"]);
  await expect(desk.getByRole("link", { name: "Nova Pike" })).toHaveCount(0);
  await desk.getByRole("link", { name: "Anvil Sparrow" }).click();
  await desk.getByRole("button", { name: "Make two records one" }).click();
  await desk.getByRole("searchbox", { name: "Find the other record" }).fill("Brine");
  await desk.getByRole("button", { name: /^Brine Kestrel/ }).click();
  await expect(desk.getByText("One was born in 1990, the other in 1995", { exact: false })).toBeVisible();
  await desk.getByRole("button", { name: "Make them one" }).click();
  await expect(desk.getByText("The two records are one.")).toBeVisible();
  await goTo(desk, "Athletes");
  await expect(desk.getByRole("link", { name: "Brine Kestrel" })).toHaveCount(0);
  await desk.getByRole("button", { name: "Undo: Two records made one" }).click();
  await desk.getByRole("button", { name: "Undo it" }).click();
  await expect(desk.getByRole("link", { name: "Brine Kestrel" })).toBeVisible();

  await desk.getByRole("combobox", { name: "League" }).selectOption("Lantern Bay");
  await desk.getByRole("button", { name: "Rename or merge this league" }).click();
  await expect(desk.getByRole("alertdialog").getByRole("combobox", { name: "League" })).toBeFocused();
  await desk.getByRole("alertdialog").getByRole("combobox", { name: "League" }).fill("Lantern Bay Skaters");
  await desk.getByRole("button", { name: "Rename it" }).click();
  await expect(desk.getByText("Lantern Bay → Lantern Bay Skaters")).toBeVisible();
});

const twoLeagues = `league,name,number
Lantern Bay,Anvil Sparrow,7
Lantern Bay,Brine Kestrel,12
Stone Quay,Cinder Plover,30
Stone Quay,Dusk Heron,41
`;

async function listTwoLeagues(tapeline: Tapeline): Promise<void> {
  const { desk } = tapeline;
  await planDay(desk);
  await bringSheet(tapeline, "both.csv", twoLeagues);
  await desk.getByRole("button", { name: "Import 4 rows" }).click();
  await expect(desk.getByRole("heading", { name: "4 rows imported" })).toBeVisible();
  await goTo(desk, "Athletes");
  await expect(desk.getByRole("link", { name: "Dusk Heron" })).toBeVisible();
}

test("the list of a league that was merged away shows all leagues, and says so", async ({ tapeline }) => {
  const { desk } = tapeline;
  await listTwoLeagues(tapeline);
  const league = desk.getByRole("main").getByRole("combobox", { name: "League" });
  await league.selectOption("Lantern Bay");
  await expect(desk.getByRole("link", { name: "Dusk Heron" })).toHaveCount(0);
  await desk.getByRole("button", { name: "Rename or merge this league" }).click();
  await desk.getByRole("alertdialog").getByRole("combobox", { name: "League" }).fill("Stone Quay");
  await desk.getByRole("button", { name: "Merge the leagues" }).click();
  await sayInitials(desk);
  for (const name of ["Anvil Sparrow", "Brine Kestrel", "Cinder Plover", "Dusk Heron"]) {
    await expect(desk.getByRole("link", { name })).toBeVisible();
  }
  await expect(league).toHaveValue("");
  await expect(desk.getByText("The league that was chosen is no longer there")).toBeVisible();
  // The button that was pressed is gone with the league: typing goes on in the search.
  await expect(desk.getByRole("searchbox")).toBeFocused();
  await league.selectOption("Stone Quay");
  await expect(desk.getByText("The league that was chosen is no longer there")).toBeHidden();
});

test("choosing a league moves and narrows nothing else of the list, on windows of any height", async ({
  tapeline,
}) => {
  const { desk } = tapeline;
  await listTwoLeagues(tapeline);
  const league = desk.getByRole("main").getByRole("combobox", { name: "League" });
  const places = async () => ({
    show: await desk.getByRole("combobox", { name: "Show" }).boundingBox(),
    head: await desk.getByRole("columnheader", { name: "Name" }).boundingBox(),
  });
  for (let height = 500; height <= 800; height += 25) {
    await showOn(desk, { width: 1280, height, scale: 1 });
    await league.selectOption("All leagues");
    await expect(desk.getByRole("link", { name: "Dusk Heron" })).toBeVisible();
    const before = await places();
    await league.selectOption("Lantern Bay");
    await expect(desk.getByRole("button", { name: "Rename or merge this league" })).toBeVisible();
    await expect(desk.getByRole("link", { name: "Dusk Heron" })).toHaveCount(0);
    expect.soft(await places(), `${height} px high`).toEqual(before);
  }
});
