import { expect, type Page } from "@playwright/test";
import { test } from "./fixture.ts";
import { nameOf, notInSight, showOn, smallScreens } from "./in-sight.ts";
import { openLive } from "./live.ts";
import { callDoor } from "./page.ts";

const outcome = { leaveOut: [], board: "bib", share: false, guardianConsent: true, by: "QA" } as const;

/** Longer than any message takes to be read; shorter than what is called old. */
const readMs = 25_000;

/** What the strip at the foot says; it is the foot's only region that is read out. */
const told = (desk: Page) => desk.getByRole("contentinfo").getByRole("status");

async function openDayWith(desk: Page, names: readonly string[]): Promise<void> {
  await callDoor(desk, "day.create", { sure: true, date: "2026-11-14", title: "Autumn testing day" });
  await callDoor(desk, "day.open", { sure: true });
  for (const [index, name] of names.entries()) {
    const who = { league: "North Quay", name, number: `${index + 1}`, birthYear: 1990, bib: index + 1 };
    await callDoor(desk, "checkIn.walkUp", { ...who, ...outcome });
  }
  await desk.reload();
}

async function goTo(desk: Page, path: string): Promise<void> {
  await desk.evaluate((hash) => {
    location.hash = hash;
  }, path);
}

/** Withdraws somebody at the table, which can be undone from the message about it. */
async function withdraw(desk: Page, name: string): Promise<void> {
  await desk.getByRole("combobox", { name: "Who is it?" }).fill(name);
  await desk.getByRole("option", { name }).click();
  await desk.getByRole("button", { name: "Withdraw" }).click();
  await expect(told(desk)).toContainText(`${name} has withdrawn`);
}

const undo = (desk: Page) => desk.getByRole("contentinfo").getByRole("button", { name: "Undo", exact: true });

test("a message goes by itself once it was read, and waits while the mouse or the keyboard is on it", async ({
  tapeline: { desk, clock },
}) => {
  await openDayWith(desk, ["Petra Fied"]);
  await goTo(desk, "/check-in");
  await clock.hold();
  await withdraw(desk, "Petra Fied");
  await clock.pass(5_000);
  await expect(told(desk)).toContainText("Petra Fied has withdrawn");
  await undo(desk).focus();
  await clock.pass(readMs);
  await expect(told(desk)).toContainText("Petra Fied has withdrawn");
  await desk.getByRole("combobox").focus();
  await told(desk).hover();
  await clock.pass(readMs);
  await expect(told(desk)).toContainText("Petra Fied has withdrawn");
  await desk.mouse.move(10, 10);
  await clock.pass(readMs);
  await expect(told(desk)).toBeEmpty();
  await expect(undo(desk)).toBeHidden();
  // The region stays, so that the next one is read out.
  await expect(told(desk)).toBeAttached();
});

test("an undo is not offered for longer than a minute, whatever lies on it, nor after something else was done", async ({
  tapeline: { desk, clock },
}) => {
  await openDayWith(desk, ["Petra Fied", "Max Impact"]);
  await goTo(desk, "/check-in");
  await clock.hold();
  await withdraw(desk, "Petra Fied");
  await undo(desk).hover();
  await clock.pass(61_000);
  await expect(undo(desk)).toBeHidden();
  await desk.mouse.move(10, 10);
  await withdraw(desk, "Max Impact");
  await desk.getByRole("button", { name: "Back to testing" }).click();
  await expect(told(desk)).toContainText("Max Impact is testing again.");
  await expect(undo(desk)).toBeHidden();
});

test("a message stays behind with its screen and its day, and a refusal until what was refused is done", async ({
  tapeline: { desk },
}) => {
  await openDayWith(desk, ["Petra Fied"]);
  await goTo(desk, "/check-in");
  await withdraw(desk, "Petra Fied");
  await goTo(desk, "/day");
  await expect(desk.getByRole("heading", { name: "Overview of the day" })).toBeVisible();
  await expect(told(desk)).toBeEmpty();
  // What leads to another screen is told there.
  await desk.getByRole("button", { name: "Close the day" }).click();
  await desk.getByRole("alertdialog").getByRole("button", { name: "Close the day" }).click();
  await expect(desk.getByRole("heading", { name: "New testing day" })).toBeVisible();
  await expect(told(desk)).toContainText("The day is closed");
  await desk.getByRole("button", { name: /demo/ }).click();
  await expect(desk.getByRole("heading", { name: "Overview of the day" })).toBeVisible();
  await expect(told(desk)).toBeEmpty();
});

test("a refusal at a station stays until it is no longer true, and no message lies over anything", async ({
  tapeline: { desk, clock },
}) => {
  await openLive(desk, "push-up", 4);
  await clock.hold();
  const bib = desk.getByRole("textbox", { name: "Bib" });
  await bib.fill("99");
  await bib.press("Enter");
  await desk.getByRole("dialog").getByRole("textbox").fill("QA");
  await desk.keyboard.press("Enter");
  await expect(told(desk)).toContainText("Nobody has bib 99 today");
  await clock.pass(120_000);
  await expect(told(desk)).toContainText("Nobody has bib 99 today");
  for (const screen of smallScreens) {
    await showOn(desk, screen);
    const all =
      "[data-whole-window] button[aria-keyshortcuts], [data-whole-window] input:not([type=range]), footer button";
    expect.soft(await notInSight(desk, all), nameOf(screen)).toEqual([]);
  }
  await bib.fill("2");
  await bib.press("Enter");
  await expect(desk.getByRole("button", { name: /^Start 1 lane/ })).toBeVisible();
  await expect(told(desk)).toBeEmpty();
});

test("after a message was closed with the mouse the keyboard is where it was", async ({
  tapeline: { desk },
}) => {
  await openDayWith(desk, ["Petra Fied", "Max Impact"]);
  await goTo(desk, "/check-in");
  await withdraw(desk, "Petra Fied");
  const search = desk.getByRole("combobox", { name: "Who is it?" });
  await search.focus();
  await desk.getByRole("button", { name: "Close this message" }).click();
  await expect(told(desk)).toBeEmpty();
  await expect(search).toBeFocused();
});
