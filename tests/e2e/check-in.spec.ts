import type { Page } from "@playwright/test";
import { expect } from "@playwright/test";
import { test } from "./fixture.ts";
import { callDoor } from "./page.ts";

/** An open day; the walk-ups of it are known afterwards and expected again. */
async function openDayWith(desk: Page, names: readonly string[]): Promise<void> {
  await callDoor(desk, "day.create", { sure: true, date: "2026-11-14", title: "Autumn testing day" });
  await callDoor(desk, "day.open", { sure: true });
  for (const [index, name] of names.entries()) {
    const outcome = { bib: null, leaveOut: [], board: "bib", share: false, guardianConsent: false, by: "QA" };
    const who = { league: "North Quay", name, number: String(index + 1), birthYear: 1990 };
    await callDoor(desk, "checkIn.walkUp", { ...who, ...outcome });
    await callDoor(desk, "checkIn.undo", { athleteId: index + 1, before: unasked });
  }
  await desk.evaluate(() => {
    location.hash = "/check-in";
  });
  await expect(desk.getByRole("combobox")).toBeFocused();
}

const unasked = {
  board: "bib",
  share: false,
  guardianConsent: false,
  asked: false,
  birthYear: 1990,
  category: null,
};

/** Asked once a session, before the first thing is entered. */
async function sayInitials(desk: Page): Promise<void> {
  await expect(desk.getByRole("textbox", { name: "Your initials" })).toBeFocused();
  await desk.keyboard.type("mk");
  await desk.keyboard.press("Enter");
}

/** Keeps what the page sends, to look for answers in it. */
async function listenToSent(desk: Page): Promise<() => Promise<string>> {
  await desk.evaluate(() => {
    const sent: string[] = [];
    Object.assign(window, { sent });
    const send = window.fetch;
    window.fetch = (input, init) => {
      if (typeof init?.body === "string") sent.push(init.body);
      return send(input, init);
    };
  });
  return () => desk.evaluate(() => (window as unknown as { sent: string[] }).sent.join("\n"));
}

test("somebody is checked in by keyboard alone, and the next one can be typed at once", async ({
  tapeline: { desk },
}) => {
  await openDayWith(desk, ["Petra Fied", "Max Impact"]);
  const { keyboard } = desk;
  await keyboard.type("ptra");
  await keyboard.press("Enter");
  await expect(desk.getByRole("heading", { name: "Petra Fied" })).toBeVisible();
  await expect(desk.getByRole("group", { name: "“Does any of this apply to you?”" })).toBeFocused();
  await keyboard.press("Tab");
  await expect(desk.getByRole("button", { name: "No to all seven" })).toBeFocused();
  await keyboard.press("Enter");
  // The focus goes to the first consent; nothing is chosen for anybody who was never asked.
  await expect(desk.getByRole("radio", { name: "Not at all" })).toBeFocused();
  await keyboard.press("Control+Enter");
  await expect(desk.getByText("2 answers are missing.")).toBeVisible();
  await expect(desk.getByRole("radio", { name: "Not at all" })).not.toBeChecked();
  await keyboard.press("ArrowRight");
  await keyboard.press("Tab");
  await keyboard.press("Space");
  await keyboard.press("Control+Enter");
  await sayInitials(desk);
  await expect(desk.getByRole("heading", { name: "Petra Fied is checked in" })).toBeVisible();
  await expect(desk.getByRole("combobox")).toBeFocused();
  await expect(desk.getByRole("combobox")).toHaveValue("");

  // A scanner types the bib and presses Enter at once.
  await keyboard.type("1");
  await keyboard.press("Enter");
  await expect(desk.getByRole("heading", { name: "Petra Fied" })).toBeVisible();
  await expect(desk.getByText("Checked in", { exact: true })).toBeVisible();
});

test("Enter after Enter opens a person and answers no question of health", async ({ tapeline: { desk } }) => {
  await openDayWith(desk, ["Petra Fied"]);
  await desk.keyboard.type("petra");
  await desk.keyboard.press("Enter");
  await expect(desk.getByRole("heading", { name: "Petra Fied" })).toBeVisible();
  for (const _ of [1, 2]) {
    await desk.keyboard.press("Enter");
    await expect(desk.locator("[data-part=body]")).toBeVisible();
    await expect(desk.locator("fieldset input:checked")).toHaveCount(0);
  }
  // What is missing is shown on the first question, and there Enter still chooses nothing.
  await desk.keyboard.press("Control+Enter");
  await expect(desk.locator("form [data-part]").first().getByRole("radio").first()).toBeFocused();
  await desk.keyboard.press("Enter");
  await desk.keyboard.press("Enter");
  await expect(desk.locator("fieldset input:checked")).toHaveCount(0);
  await expect(desk.getByRole("heading", { name: "Petra Fied is checked in" })).toBeHidden();
});

test("searching for the one who is open already goes on at their first question; the tab's key leads out", async ({
  tapeline: { desk },
}) => {
  await openDayWith(desk, ["Petra Fied", "Max Impact"]);
  const { keyboard } = desk;
  const questions = desk.getByRole("group", { name: "“Does any of this apply to you?”" });
  const petra = desk.getByRole("heading", { name: "Petra Fied" });
  for (const _ of ["first", "again"]) {
    await keyboard.press("/");
    await keyboard.type("petra");
    await expect(desk.getByRole("option")).toHaveCount(1);
    await keyboard.press("Enter");
    await expect(petra).toBeVisible();
    await expect(questions).toBeFocused();
  }
  await keyboard.press("Tab");
  await keyboard.press("Enter");
  await expect(desk.getByText("No to all seven questions.")).toBeVisible();
  await expect(desk.getByRole("radio", { name: "Not at all" })).toBeFocused();
  // Once the questions are answered and folded, the focus still comes back to the form, which keeps its answers.
  await keyboard.press("/");
  await keyboard.press("Enter");
  await expect(questions).toBeFocused();
  await expect(desk.getByText("No to all seven questions.")).toBeVisible();
  await keyboard.press("Alt+2");
  await expect(petra).toBeHidden();
  await expect(desk.getByRole("combobox", { name: "Who is it?" })).toBeFocused();
});

test("a yes shows who decides and asks to choose; the answer never leaves the window", async ({
  tapeline: { desk },
}) => {
  await openDayWith(desk, ["Petra Fied"]);
  const sent = await listenToSent(desk);
  await desk.keyboard.type("petra");
  await desk.keyboard.press("Enter");
  await desk.getByRole("button", { name: "No to all seven" }).click();
  await desk.getByRole("button", { name: "Ask again" }).click();
  await desk.locator("[data-part=body]").getByText("Yes").click();
  await expect(desk.getByText("Send them to the medical lead before any test.").first()).toBeVisible();
  await desk.locator("[data-part=heart]").getByText("Yes").click();
  await expect(desk.getByText("No test without a doctor's word.").first()).toBeVisible();
  await expect(desk.getByText("Send them to the medical lead before any test.")).toHaveCount(0);
  await desk.getByText("Skip some", { exact: true }).click();
  await desk.locator("[data-part=leaveOut]").getByText("Endurance").click();
  await desk.locator("[data-part=board]").getByText("By bib only").click();
  await desk.locator("[data-part=share]").getByText("No").click();
  await desk.getByRole("button", { name: /^Check in · bib 1/ }).click();
  await sayInitials(desk);
  await expect(desk.getByText("Skips")).toBeVisible();
  const [admission = ""] = (await sent()).split("\n").filter((body) => body.includes("leaveOut"));
  expect(Object.keys(inputOf(admission)).sort()).toEqual(
    ["athleteId", "bib", "birthYear", "board", "by", "guardianConsent", "leaveOut", "share"].sort(),
  );

  await desk.getByRole("button", { name: "Undo" }).first().click();
  await expect(desk.getByText("Petra Fied is expected again.")).toBeVisible();
});

/** The input inside a batch of one. */
function inputOf(body: string): object {
  const parsed = JSON.parse(body) as Record<string, object>;
  return parsed["0"] ?? parsed;
}

test("a refusal leaves everything that was typed", async ({ tapeline: { desk } }) => {
  await openDayWith(desk, ["Petra Fied", "Max Impact"]);
  const outcome = { bib: 7, leaveOut: [], board: "bib", share: false, guardianConsent: false, by: "QA" };
  await callDoor(desk, "checkIn.admit", { athleteId: 2, ...outcome });
  await desk.keyboard.type("petra");
  await desk.keyboard.press("Enter");
  await desk.getByRole("button", { name: "No to all seven" }).click();
  await desk.locator("[data-part=board]").getByText("By name").click();
  await desk.locator("[data-part=share]").getByText("Yes").click();
  const bib = desk.getByRole("textbox", { name: "Next free bib" });
  await bib.fill("7");
  await desk.keyboard.press("Enter");
  await sayInitials(desk);
  await expect(desk.getByText("Max Impact has bib 7. The next free one is 1.")).toBeVisible();
  await expect(desk.getByRole("textbox", { name: "Bib" })).toHaveValue("7");
  await expect(desk.getByRole("radio", { name: "By name" })).toBeChecked();
  await desk.getByRole("textbox", { name: "Bib" }).fill("8");
  await desk.keyboard.press("Enter");
  await expect(desk.getByRole("heading", { name: "Petra Fied is checked in" })).toBeVisible();
});

test("a league that is typed by half is asked about once, and makes no new one by itself", async ({
  tapeline: { desk },
}) => {
  await openDayWith(desk, ["Petra Fied"]);
  await desk.keyboard.press("Alt+n");
  await desk.getByRole("textbox", { name: "Derby name" }).fill("Heron Walk");
  const league = desk.getByRole("combobox", { name: "League" });
  await league.fill("North");
  await expect(desk.getByRole("option", { name: "North Quay" })).toBeVisible();
  await desk.keyboard.press("Tab");
  await desk.getByRole("textbox", { name: "Year of birth" }).fill("1994");
  await desk.getByRole("button", { name: "No to all seven" }).click();
  await desk
    .getByRole("radiogroup", { name: /big screen in the hall/ })
    .getByText("By name")
    .click();
  await desk
    .getByRole("radiogroup", { name: /published without/ })
    .getByText("Yes")
    .click();
  await desk.keyboard.press("Control+Enter");
  await expect(desk.getByText(/^Choose a league from the list, or check in again/)).toBeVisible();
  await expect(league).toBeFocused();
  // The list that the sentence speaks of is there.
  await expect(desk.getByRole("option", { name: "North Quay" })).toBeVisible();
  // Left as it is, it is meant so.
  await desk.keyboard.press("Control+Enter");
  await sayInitials(desk);
  await expect(desk.getByRole("heading", { name: "Heron Walk is checked in" })).toBeVisible();
});

test("a walk-up's league is chosen by arrows and Enter or Tab, and what is typed next is the year", async ({
  tapeline: { desk },
}) => {
  await openDayWith(desk, ["Petra Fied"]);
  const { keyboard } = desk;
  const league = desk.getByRole("combobox", { name: "League" });
  const year = desk.getByRole("textbox", { name: "Year of birth" });
  await keyboard.press("Alt+n");
  await expect(desk.getByRole("textbox", { name: "Derby name" })).toBeFocused();
  await keyboard.type("Fen Wick");
  await keyboard.press("Tab");
  await keyboard.type("55");
  for (const key of ["Enter", "Tab"]) {
    await desk.getByRole("textbox", { name: "Number", exact: true }).focus();
    await keyboard.press("Tab");
    await expect(league).toBeFocused();
    await league.fill("");
    await keyboard.type("nor");
    await expect(desk.getByRole("option", { name: "North Quay" })).toBeVisible();
    await keyboard.press("ArrowDown");
    await keyboard.press(key);
    await expect(league).toHaveValue("North Quay");
    await expect(year).toBeFocused();
    // Enter took the league, and did not send the form.
    await expect(desk.getByRole("alert")).toHaveCount(0);
    await keyboard.type("1994");
    await expect(year).toHaveValue("1994");
    await year.fill("");
  }
});

test("the keyboard goes on at the search after a withdrawal, and at the next step after a no-show", async ({
  tapeline: { desk },
}) => {
  await openDayWith(desk, ["Petra Fied", "Max Impact"]);
  await callDoor(desk, "checkIn.admitAll");
  const search = desk.getByRole("combobox", { name: "Who is it?" });
  await search.fill("petra");
  await expect(desk.getByRole("option", { name: "Petra Fied" })).toBeVisible();
  await search.press("Enter");
  await desk.getByRole("button", { name: "Withdraw" }).focus();
  await desk.keyboard.press("Enter");
  await expect(desk.getByRole("button", { name: "Back to testing" })).toBeVisible();
  // Not on what would undo it: a second Enter does nothing.
  await expect(search).toBeFocused();
  await callDoor(desk, "checkIn.undo", { athleteId: 2, before: unasked });
  await desk.keyboard.type("max");
  await expect(desk.getByRole("option", { name: "Max Impact" })).toBeVisible();
  await desk.keyboard.press("Enter");
  await desk.getByRole("button", { name: "No-show" }).focus();
  await desk.keyboard.press("Enter");
  await expect(desk.getByText("Max Impact is marked as a no-show.")).toBeVisible();
  await expect(desk.getByRole("button", { name: "Ask and check in" })).toBeFocused();
});
