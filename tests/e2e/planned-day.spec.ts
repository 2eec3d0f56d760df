import { expect, type Page } from "@playwright/test";
import { test } from "./fixture.ts";
import { callDoor, goTo } from "./page.ts";
import { pastResults, roster, takeIn } from "./sheets.ts";

async function sayInitials(desk: Page): Promise<void> {
  const dialog = desk.getByRole("dialog", { name: "Who is at this laptop?" });
  await dialog.getByRole("textbox").fill("QA");
  await dialog.getByRole("textbox").press("Enter");
}

test("a planned day of a wrong name and year is corrected on the screen, or thrown away for another one", async ({
  tapeline: { desk },
}) => {
  const today = await desk.evaluate(() => new Intl.DateTimeFormat("sv").format(new Date()));
  const create = async (title: string) => {
    await desk.getByRole("textbox", { name: "Name" }).fill(title);
    await desk.getByRole("button", { name: "Create the day" }).click();
  };
  await desk.getByLabel("Date", { exact: true }).fill("2046-12-06");
  await create("Wintr Testng");
  await expect(desk.getByText(/^The day would be on .*2046, which is in \d\d years/)).toBeVisible();
  await desk.getByRole("button", { name: "Yes, that date" }).click();
  await expect(desk.getByText(/Check the date before anybody comes/)).toBeVisible();
  await desk.getByRole("button", { name: "Change name or date" }).click();
  await desk.getByRole("textbox", { name: "Name" }).fill("Winter testing");
  await desk.getByLabel("Date", { exact: true }).fill(today);
  await desk.getByRole("button", { name: "Save", exact: true }).click();
  await expect(desk.getByText("The name and the date are saved.")).toBeVisible();
  await expect(desk.getByRole("region", { name: "Name and date" })).toContainText("Winter testing");
  await expect(desk.getByText(/Check the date before anybody comes/)).toBeHidden();
  await desk.getByRole("button", { name: "Throw this day away" }).click();
  await desk.getByRole("button", { name: "Throw it away" }).click();
  await expect(desk.getByText(/^The day is thrown away/)).toBeVisible();
  await create("Another one");
  await expect(desk.getByRole("region", { name: "Name and date" })).toContainText("Another one");
});

test("closing says what is missing, leads to what comes now, and a late paper opens the day again", async ({
  tapeline: { desk },
}) => {
  await callDoor(desk, "day.openDemo");
  await desk.reload();
  await goTo(desk, "Overview");
  await desk.getByRole("button", { name: "Close the day" }).click();
  const question = desk.getByRole("alertdialog");
  await expect(question.getByText("Before you close it:")).toBeVisible();
  await expect(question.getByRole("link", { name: /still expected/ })).toBeVisible();
  await expect(question.getByRole("link", { name: /waits? at Strength/ })).toBeVisible();
  await question.getByRole("button", { name: "Keep it open" }).click();

  await callDoor(desk, "day.leaveDemo");
  const { dayId } = (await callDoor(desk, "day.create", {
    ...{ sure: true, date: "2026-11-14", title: "Autumn testing day" },
  })) as { dayId: number };
  await callDoor(desk, "day.open", { sure: true });
  await callDoor(desk, "checkIn.walkUp", {
    ...{ league: "North Quay", name: "Ada Mant", number: "7", birthYear: 1990, bib: 1 },
    ...{ leaveOut: [], board: "bib", share: false, guardianConsent: false, by: "QA" },
  });
  await callDoor(desk, "day.close", { dayId });
  await desk.reload();
  await desk.evaluate(() => {
    location.hash = "/";
  });
  await expect(desk.getByRole("heading", { name: "“Autumn testing day” is closed" })).toBeInViewport();
  for (const name of ["Summary of the day", "Cards to take home", "Share results"]) {
    await expect(desk.getByRole("link", { name }).first()).toBeInViewport();
  }
  // The next day may begin with the same people.
  const { dayId: next } = (await callDoor(desk, "day.create", {
    ...{ sure: true, date: "2026-12-05", title: "The next one" },
  })) as { dayId: number };
  await desk.getByRole("link", { name: "Go to your testing day" }).click();
  await desk.getByRole("button", { name: "The same people as last time: Autumn testing day" }).click();
  await expect(desk.getByText("1 person of “Autumn testing day” is on the list.")).toBeVisible();
  await expect(desk.getByText(/^1 person is on the list/)).toBeVisible();
  await callDoor(desk, "day.discard", { dayId: next });
  await desk.evaluate(() => {
    location.hash = "/";
  });
  await desk.getByRole("button", { name: "Open again: Autumn testing day" }).click();
  const again = desk.getByRole("alertdialog");
  await again
    .getByRole("textbox", { name: "Why is it opened again?" })
    .fill("Two papers lay under the table");
  await again.getByRole("button", { name: "Open again" }).click();
  await sayInitials(desk);
  await expect(desk.getByText(/Opened again by QA: Two papers lay under the table/)).toBeVisible();
});

test("a wrong imported result is corrected on the athlete's page, and its line stays with who and why", async ({
  tapeline,
}) => {
  const { desk } = tapeline;
  await callDoor(desk, "day.create", { sure: true, date: "2026-03-14", title: "Spring testing day" });
  await desk.reload();
  await takeIn(tapeline, "roster.csv", roster, { isNew: 16, keptBack: 1 });
  await takeIn(tapeline, "past.csv", pastResults, { isNew: 10, keptBack: 0 });
  await goTo(desk, "Athletes");
  await desk.getByRole("link", { name: "Dusk Heron" }).click();
  await desk.getByRole("button", { name: /^Correct or remove: .*16 reps$/ }).click();
  const dialog = desk.getByRole("alertdialog");
  await dialog.getByRole("textbox", { name: "Right result" }).fill("15");
  await dialog.getByRole("textbox", { name: "Why?" }).fill("misread");
  await dialog.getByRole("button", { name: "Correct it" }).click();
  await sayInitials(desk);
  await expect(desk.getByText(/corrected to 15 reps by QA, .*: misread/)).toBeVisible();
  await expect(desk.getByRole("button", { name: /^Correct or remove: .*15 reps$/ })).toBeVisible();
});
