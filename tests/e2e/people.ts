import { expect, type Page } from "@playwright/test";
import { callDoor, choose, goTo } from "./page.ts";

/** The day of the main job: ages and the quarter are worked out from it. */
export const day = { title: "Spring testing day", date: "2026-03-14" };

/** Who gets which bib. Six come to the table first, then everybody else is checked in, in the roster's order. */
export const bibs = {
  anvil: 1,
  juniper: 2,
  cinder: 3,
  ember: 4,
  rook: 5,
  brine: 6,
  dusk: 7,
  hollow: 8,
  flint: 11,
} as const;

const board = "“How may the big screen in the hall show you?”";
const share = "“May your results be published without your name, also on the internet?”";
const guardian =
  "May be under 18. Have you seen the guardian's consent to testing, the big screen and sharing?";
const hardSession = "“A game or a hard practice in the past 24 hours?”";

/** Asked once a session, before the first thing is entered. */
async function sayInitials(desk: Page): Promise<void> {
  await expect(desk.getByRole("textbox", { name: "Your initials" })).toBeFocused();
  await desk.keyboard.type("zuqo");
  await desk.keyboard.press("Enter");
}

async function find(desk: Page, typed: string, name: string): Promise<void> {
  const search = desk.getByRole("combobox", { name: "Who is it?" });
  await search.fill(typed);
  await expect(desk.getByRole("option", { name }).first()).toBeVisible();
  await search.press("Enter");
  await expect(desk.getByRole("heading", { name, level: 2 })).toBeVisible();
}

async function consents(desk: Page, shown: string, shares: "Yes" | "No"): Promise<void> {
  await choose(desk, board, shown);
  await choose(desk, share, shares);
}

async function isCheckedIn(desk: Page, name: string, bib: number): Promise<void> {
  await expect(desk.getByRole("heading", { name: `${name} is checked in` })).toBeVisible();
  await expect(desk.getByText(`Hand over bib${bib}`)).toBeVisible();
  await expect(desk.getByRole("combobox", { name: "Who is it?" })).toBeFocused();
}

/** Found in spite of two slips, asked, and checked in with the keyboard. */
export async function checkInWithTypo(desk: Page): Promise<void> {
  await goTo(desk, "Check-in");
  await find(desk, "anvl sparow", "Anvil Sparrow");
  await expect(desk.getByRole("group", { name: "“Does any of this apply to you?”" })).toBeFocused();
  await desk.keyboard.press("Tab");
  await expect(desk.getByRole("button", { name: "No to all seven" })).toBeFocused();
  await desk.keyboard.press("Enter");
  await consents(desk, "By name", "Yes");
  await desk.keyboard.press("Control+Enter");
  await sayInitials(desk);
  await isCheckedIn(desk, "Anvil Sparrow", bibs.anvil);
}

/** Nobody who may be under 18 is checked in before the guardian's consent was seen. */
export async function checkInMinor(desk: Page): Promise<void> {
  await find(desk, "juniper", "Juniper Wick");
  await desk.getByRole("button", { name: "No to all seven" }).click();
  await consents(desk, "By bib only", "Yes");
  await choose(desk, guardian, "Not seen");
  await desk.getByRole("button", { name: /^Check in/ }).click();
  await expect(desk.getByText("Without the guardian's consent to testing they can't test.")).toBeVisible();
  await choose(desk, guardian, "Seen");
  await desk.getByRole("button", { name: "Check in · bib 2" }).click();
  await isCheckedIn(desk, "Juniper Wick", bibs.juniper);
}

/** A yes that matters does not block: somebody who may decide is asked, and one station is left out. */
export async function checkInWithWorry(desk: Page): Promise<void> {
  await find(desk, "331", "Cinder Plover");
  await desk.getByRole("button", { name: "Answer one by one" }).click();
  for (const question of [
    "chest pain",
    "blow to the head",
    "told you not",
    "injured or ill",
    "asthma",
    "warm up",
  ]) {
    await desk
      .getByRole("radiogroup", { name: new RegExp(question, "i") })
      .getByText("No", { exact: true })
      .click();
  }
  await choose(desk, hardSession, "Yes");
  await expect(
    desk.getByText("Ask their coach or the organiser: test today, or another day?").first(),
  ).toBeVisible();
  await choose(desk, "Tests today", "Skip some");
  await desk.getByRole("group", { name: "Tick the tests to skip" }).getByText("Endurance").click();
  await consents(desk, "By bib only", "Yes");
  await desk.getByRole("button", { name: "Check in · bib 3" }).click();
  await isCheckedIn(desk, "Cinder Plover", bibs.cinder);
  await expect(desk.getByText("Skips")).toBeVisible();
}

/** Two leagues have a number 12, so that Enter opens nobody until one of them is chosen. */
export async function checkInHidden(desk: Page): Promise<void> {
  const search = desk.getByRole("combobox", { name: "Who is it?" });
  await search.fill("12");
  await search.press("Enter");
  await expect(desk.getByRole("alert")).toContainText("Several people have number 12.");
  await desk.getByRole("option", { name: "Ember Dunlin" }).click();
  await desk.getByRole("button", { name: "No to all seven" }).click();
  await consents(desk, "Not at all", "Yes");
  await desk.getByRole("button", { name: "Check in · bib 4" }).click();
  await isCheckedIn(desk, "Ember Dunlin", bibs.ember);
}

/** On no list: the name that was searched for is not typed again. */
export async function checkInWalkUp(desk: Page): Promise<void> {
  await desk.getByRole("combobox", { name: "Who is it?" }).fill("Rook Tansy");
  await expect(desk.getByText("No match for “Rook Tansy”.")).toBeVisible();
  await desk.keyboard.press("Alt+n");
  await expect(desk.getByRole("textbox", { name: "Derby name" })).toHaveValue("Rook Tansy");
  await desk.getByRole("textbox", { name: "Number", exact: true }).fill("404");
  // The leagues that are known come up under their field.
  await desk.getByRole("combobox", { name: "League" }).click();
  await desk.getByRole("option", { name: "Gravel Moon" }).click();
  await choose(desk, "Category for comparing results", "Women");
  await desk.getByRole("textbox", { name: "Year of birth" }).fill("1998");
  await desk.getByRole("button", { name: "No to all seven" }).click();
  await consents(desk, "By bib only", "No");
  await desk.getByRole("button", { name: "Check in · bib 5" }).click();
  await isCheckedIn(desk, "Rook Tansy", bibs.rook);
}

/** Checked in by mistake: undone, and expected again with the bib free. */
export async function undoCheckIn(desk: Page): Promise<void> {
  await find(desk, "flint", "Flint Curlew");
  await desk.getByRole("button", { name: "No to all seven" }).click();
  await consents(desk, "By name", "Yes");
  await desk.getByRole("button", { name: "Check in · bib 6" }).click();
  await isCheckedIn(desk, "Flint Curlew", 6);
  await desk.getByRole("main").getByRole("button", { name: "Undo" }).click();
  await expect(desk.getByText("Flint Curlew is expected again.")).toBeVisible();
}

export async function markNoShow(desk: Page): Promise<void> {
  await find(desk, "nettle", "Nettle Quay");
  await desk.getByRole("button", { name: "No-show" }).click();
  await expect(desk.getByText("Nettle Quay is marked as a no-show.")).toBeVisible();
}

/** Everybody who is still expected; the screen has no button for that, because each should be asked. */
export async function checkInTheRest(desk: Page): Promise<void> {
  const { admitted } = (await callDoor(desk, "checkIn.admitAll")) as { admitted: number };
  // 16 of the roster, less four of them checked in by hand and the one who did not come; the walk-up is the fifth.
  expect(admitted).toBe(16 - 4 - 1);
  await goTo(desk, "Overview");
  await expect(desk.getByRole("main")).toContainText("Here to test16 of 17");
}
