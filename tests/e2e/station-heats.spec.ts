import { expect, type Page } from "@playwright/test";
import { cm } from "../lengths.ts";
import { test } from "./fixture.ts";
import { countedKeys, gather, goToLive, heatOf, laneOf, openLive, setLanes } from "./live.ts";
import { callIn, typeKeys } from "./live-own.ts";
import { callDoor } from "./page.ts";
import { attemptsAt, goToPaper, openStation } from "./paper.ts";

const caught = (desk: Page) => desk.getByRole("region", { name: "Next up" });

/** Two lanes of push-ups that are through, at the screen that ran them. */
async function twoThrough(desk: Page): Promise<void> {
  await openStation(desk, "push-up", 9);
  await desk.keyboard.press("Alt+L");
  await goToLive(desk, "push-up");
  await setLanes(desk, 2);
  await gather(desk, countedKeys(desk), 2);
  const { heatId } = await heatOf(desk, "push-up");
  await callDoor(desk, "heat.start", { heatId, startedAgoMs: 46_000 });
  await expect(laneOf(desk, 1)).toHaveAttribute("data-phase", "going");
  await desk.keyboard.press("Shift+Digit1");
  await desk.keyboard.press("Shift+Digit2");
  await expect(laneOf(desk, 2)).toHaveAttribute("data-phase", "done");
}

test("a heat that nobody finishes holds nobody, and its lanes still offer to correct", async ({
  tapeline: { desk },
}) => {
  await twoThrough(desk);
  await desk.keyboard.press("Alt+4");
  await expect(caught(desk).getByRole("listitem")).toHaveCount(2);
  await expect(caught(desk)).toContainText("Skater 1");
  await expect(caught(desk)).toContainText("resting until");
  await desk.keyboard.press("Alt+3");
  const correct = laneOf(desk, 1).getByRole("button", { name: /^Correct this result/ });
  // The clock runs: a stop so near to a beat is asked about first.
  const notDone = laneOf(desk, 1).getByRole("button", { name: /was not done/ });
  await expect(correct.or(notDone)).toBeVisible();
  if (await notDone.isVisible()) await notDone.click();
  await expect(correct).toBeVisible();
  await correct.click();
  const dialog = desk.getByRole("dialog", { name: /^Correct bib 1/ });
  await dialog.getByRole("textbox", { name: "Top beats in total" }).fill("21");
  await dialog.getByRole("textbox", { name: "Reason" }).fill("one not seen");
  await desk.keyboard.press("Enter");
  await expect(dialog).toBeHidden();
  await expect(laneOf(desk, 1)).toContainText("21");
  // What stands is what the next correction begins with.
  await correct.click();
  await expect(dialog.getByRole("textbox", { name: "Top beats in total" })).toHaveValue("21");
  await desk.keyboard.press("Escape");
  // The heat can be left without calling anybody.
  await desk.keyboard.press("x");
  await expect(desk.getByRole("button", { name: /^Call the next/ })).toBeVisible();
  await expect(desk.getByText("2 lanes", { exact: true })).toBeVisible();
  // Seven wait, and six are named.
  await expect(caught(desk)).toContainText("and 1 more");
});

test("whoever still rests is let start by a button beside the sentence that offers it, and not by Enter", async ({
  tapeline: { desk },
}) => {
  await twoThrough(desk);
  await desk.keyboard.press("Alt+4");
  await expect(caught(desk).getByRole("listitem")).toHaveCount(2);
  await desk.keyboard.press("1");
  const bib = desk.getByRole("textbox", { name: "Bib" });
  await expect(bib).toHaveValue("1");
  await bib.press("Enter");
  await expect(desk.getByText(/of rest left/)).toBeVisible();
  const letStart = desk.getByRole("button", { name: "Let them start now" });
  const again = desk.waitForResponse(/heat\.place/);
  await bib.press("Enter");
  expect((await again).status()).toBe(409);
  await letStart.click();
  await expect.poll(async () => (await heatOf(desk, "agility")).lane.map(({ who }) => who.bib)).toEqual([1]);
  await expect(letStart).toBeHidden();
});

test("keys do what their caps say after a press on a choice, and after a message is closed", async ({
  tapeline: { desk },
}) => {
  await openStation(desk, "push-up", 3);
  await goToPaper(desk, "agility");
  await expect(desk.getByRole("heading", { level: 1 })).toContainText("Quadrant jump");
  await desk.keyboard.press("Alt+N");
  const close = desk.getByRole("button", { name: "Close this message" });
  await expect(close).toBeVisible();
  const bib = desk.getByRole("textbox", { name: "Bib" });
  await bib.focus();
  await close.click();
  await expect(close).toBeHidden();
  await desk.keyboard.type("7");
  await expect(bib).toHaveValue("7");
});

test("the check-in's search is found again from a choice, by the key that its cap shows", async ({
  tapeline: { desk },
}) => {
  await callDoor(desk, "day.create", { sure: true, date: "2026-11-14", title: "Autumn testing day" });
  await callDoor(desk, "day.open", { sure: true });
  await desk.evaluate(() => {
    location.hash = "/check-in";
  });
  await expect(desk.getByRole("combobox", { name: "Who is it?" })).toBeFocused();
  await desk.keyboard.press("Alt+N");
  const choice = desk.getByRole("radiogroup").first().getByRole("radio").first();
  await choice.focus();
  await expect(choice).toBeFocused();
  await desk.keyboard.press("/");
  await expect(desk.getByRole("combobox", { name: "Who is it?" })).toBeFocused();
});

test("two readings typed in one go are two readings, and none is longer than a reading", async ({
  tapeline: { desk, clock },
}) => {
  await openLive(desk, "vertical", 2);
  await clock.hold();
  const keys = countedKeys(desk);
  await callIn(desk, keys, "vertical", [1, 2]);
  const field = desk.getByRole("status", { name: /^(Standing reach|Height touched, \d of \d):/ });
  await typeKeys(clock.pass, keys, ..."220262");
  await expect(field).toHaveAccessibleName("Height touched, 1 of 3: 262");
  await expect(desk.getByText(/^Standing reach 220 cm/)).toBeVisible();
  // A digit after a question begins the reading anew; Enter is no yes, and Y is one.
  await typeKeys(clock.pass, keys, "Backspace", "Backspace", "Backspace", ..."330", "Enter", "Enter");
  await expect(desk.getByRole("alert")).toContainText("Is this right?");
  expect((await heatOf(desk, "vertical")).events.map(({ kind }) => kind)).toEqual(["reach"]);
  await typeKeys(clock.pass, keys, ..."26");
  await expect(field).toHaveAccessibleName("Height touched, 1 of 3: 26");
  await typeKeys(clock.pass, keys, "Backspace", "Backspace", ..."300", "y");
  await expect(field).toHaveAccessibleName("Height touched, 2 of 3:");
  // The caps on the lanes say Shift, and that is what changes the lane.
  await expect(laneOf(desk, 2)).toContainText("Shift+2");
  await keys.press("Shift+Digit2");
  await expect(field).toHaveAccessibleName("Standing reach: ");
});

test("a corrected leap is corrected in the pane beside its lane too", async ({
  tapeline: { desk, clock },
}) => {
  await openLive(desk, "vertical", 1);
  await clock.hold();
  const keys = countedKeys(desk);
  await callIn(desk, keys, "vertical", [1]);
  await typeKeys(
    clock.pass,
    keys,
    ..."220",
    "Enter",
    ..."250",
    "Enter",
    ..."257",
    "Enter",
    ..."255",
    "Enter",
  );
  await expect(laneOf(desk, 1)).toContainText("37cm");
  const stage = desk.locator('[data-test="vertical"]').last();
  await laneOf(desk, 1)
    .getByRole("button", { name: /^Correct this result/ })
    .click();
  const dialog = desk.getByRole("dialog");
  await dialog.getByRole("textbox", { name: "Touch", exact: true }).fill("259");
  await dialog.getByRole("textbox", { name: "Reason" }).fill("misread");
  await desk.keyboard.press("Enter");
  await expect(dialog).toBeHidden();
  await expect(laneOf(desk, 1)).toContainText("39cm");
  await expect(stage).toContainText("Best so far39 cm");
  await expect(stage).toContainText("Jump 339 cm");
  expect((await attemptsAt(desk, "vertical"))[0]?.seen).toEqual({
    standingReach: cm(220),
    touchReach: cm(259),
  });
});

test("before the start a lane's cap says what its key does, and a heat that runs shows its caution", async ({
  tapeline: { desk },
}) => {
  await openLive(desk, "push-up", 2);
  await setLanes(desk, 2);
  await expect(desk.getByText("Lane 1: free")).toBeVisible();
  await gather(desk, countedKeys(desk), 2);
  await expect(desk.getByRole("button", { name: /^Shift\+1 1 Skater 1/ })).toBeVisible();
  await desk.keyboard.press("Shift+Digit1");
  await expect(desk.getByRole("button", { name: /^Send back/ })).toBeVisible();
  await desk.keyboard.press("Shift+Digit1");
  const { heatId } = await heatOf(desk, "push-up");
  await callDoor(desk, "heat.start", { heatId, startedAgoMs: 10_000 });
  await expect(laneOf(desk, 1)).toHaveAttribute("data-phase", "going");
  await expect(desk.getByText(/^Stop the test at once if there is pain/)).toBeVisible();
});

test("a button that the mouse has pressed does not take the key that starts the heat", async ({
  tapeline: { desk },
}) => {
  await openLive(desk, "push-up", 2);
  await setLanes(desk, 2);
  await gather(desk, countedKeys(desk), 2);
  await desk.getByRole("button", { name: /^The rules/ }).click();
  await expect(desk.getByRole("dialog")).toBeVisible();
  await desk.keyboard.press("Escape");
  await expect(desk.getByRole("dialog")).toBeHidden();
  await desk.keyboard.press("Space");
  await expect(laneOf(desk, 1)).toHaveAttribute("data-phase", "going");
  await expect(desk.getByRole("dialog")).toBeHidden();
});
