import { expect, type Page } from "@playwright/test";
import { test } from "./fixture.ts";
import { attemptsAt, field, goToPaper, isInSight, key, openStation } from "./paper.ts";

const doubt = (desk: Page) => desk.getByRole("alert").filter({ hasText: "No, change it" });
const saved = (desk: Page) => desk.getByRole("status").filter({ hasText: "Saved" });

/** Says who enters, by an entry that needs no question. */
async function enterPlainly(desk: Page): Promise<void> {
  await key(
    desk,
    ["Bib", "3"],
    ["Top beats in total", "20"],
    ["Missed reps at the end", "0"],
    ["Your initials", "mk"],
  );
  await expect(saved(desk)).toContainText("20 reps");
}

/** Types at a good typist's pace, whatever has the focus. */
async function typeOn(desk: Page, ...keys: readonly string[]): Promise<void> {
  for (const each of keys) await desk.keyboard.press(each, { delay: 30 });
}

test("no Enter says yes to a doubt, and the next bib typed meanwhile is kept for after it", async ({
  tapeline: { desk },
}) => {
  await openStation(desk, "push-up", 3);
  await enterPlainly(desk);
  await key(desk, ["Bib", "1"], ["Top beats in total", "0"], ["Missed reps at the end", "0"]);
  await expect(doubt(desk)).toBeVisible();
  await expect(desk.getByRole("button", { name: /^No, change it/ })).toBeFocused();
  // The next athlete's paper, heads down: nothing of it is for bib 1, and nothing is saved.
  await typeOn(desk, "2", "Enter", "2", "5", "Enter", "Enter");
  await expect(doubt(desk)).toContainText("Next bib: 2");
  expect((await attemptsAt(desk, "push-up")).map(({ bib }) => bib)).toEqual([3]);
  await desk.keyboard.press("y");
  await expect(field(desk, "Top beats in total")).toBeFocused();
  await expect(field(desk, "Bib")).toHaveValue("2");
  await expect(field(desk, "Top beats in total")).toHaveValue("");
  expect(await attemptsAt(desk, "push-up")).toEqual([
    { bib: 1, seen: { how: "tally", reps: 0, offAtEnd: 0 }, stands: true },
    { bib: 3, seen: { how: "tally", reps: 20, offAtEnd: 0 }, stands: true },
  ]);
});

test("no to a doubt leaves what was typed, and says that it is not saved", async ({ tapeline: { desk } }) => {
  await openStation(desk, "push-up", 3);
  await enterPlainly(desk);
  await key(desk, ["Bib", "1"], ["Top beats in total", "85"], ["Missed reps at the end", "3"]);
  await expect(doubt(desk)).toContainText("82 reps is a lot at this tempo.");
  await desk.keyboard.press("Escape");
  await expect(field(desk, "Top beats in total")).toBeFocused();
  await expect(field(desk, "Top beats in total")).toHaveValue("85");
  await expect(desk.getByText(/^Not saved yet:/)).toBeVisible();
  expect((await attemptsAt(desk, "push-up")).map(({ bib }) => bib)).toEqual([3]);
  // Typed heads down: 35 for 85 lands in what was doubted. Among the missed ones it would make 85 − 35 = 50, and pass.
  await typeOn(desk, "3", "5", "Enter");
  await expect(field(desk, "Missed reps at the end")).toBeFocused();
  await typeOn(desk, "Enter");
  await expect(saved(desk)).toContainText("32 reps");
});

test("a doubtful leap is asked about in sight, and Enter after Enter saves nothing", async ({
  tapeline: { app, desk },
}) => {
  await app.evaluate(({ BrowserWindow }) => {
    for (const window of BrowserWindow.getAllWindows()) window.setContentSize(1280, 800);
  });
  await openStation(desk, "push-up", 3);
  await enterPlainly(desk);
  await goToPaper(desk, "vertical");
  await key(desk, ["Bib", "1"], ["Standing reach", "190"], ["Touch 1", "285"]);
  await expect(field(desk, "Touch 2")).toBeFocused();
  await desk.keyboard.press("Enter");
  await expect(desk.getByRole("alert")).toContainText("95 cm");
  await isInSight(desk.getByRole("button", { name: /^No, change it/ }));
  await isInSight(desk.getByText(/95 cm .* is a very high jump/));
  await desk.keyboard.press("Enter");
  expect(await attemptsAt(desk, "vertical")).toEqual([]);
  await desk.waitForTimeout(1_000);
  await desk.keyboard.press("Enter");
  await expect(doubt(desk)).toBeHidden();
  expect(await attemptsAt(desk, "vertical")).toEqual([]);
});

test("145 and 630 are asked about: minutes or seconds, a key for each and none of them Enter", async ({
  tapeline: { desk },
}) => {
  await openStation(desk, "push-up", 3);
  await enterPlainly(desk);
  await goToPaper(desk, "core");
  await key(desk, ["Bib", "1"], ["Time", "145"]);
  await expect(doubt(desk)).toContainText("1:45");
  await expect(doubt(desk)).toContainText("145 s (2:25)");
  await isInSight(desk.getByRole("button", { name: /^No, change it/ }));
  await desk.waitForTimeout(1_000);
  await desk.keyboard.press("Enter");
  await expect(field(desk, "Time")).toBeFocused();
  expect(await attemptsAt(desk, "core")).toEqual([]);
  await key(desk, ["Time", "145"]);
  await desk.keyboard.press("m");
  await expect(saved(desk)).toContainText("1:45");
  expect(await attemptsAt(desk, "core")).toEqual([{ bib: 1, seen: { held: 105_000 }, stands: true }]);

  await goToPaper(desk, "endurance");
  await key(desk, ["Bib", "2"], ["Time", "630"]);
  await expect(doubt(desk)).toContainText("6:30");
  await desk.keyboard.press("s");
  await expect(saved(desk)).toContainText("10:30.0");
  await key(desk, ["Bib", "1"], ["Time", "630.5"]);
  await expect(doubt(desk)).toContainText("6:30.5");
  await desk.keyboard.press("m");
  await expect(saved(desk)).toContainText("6:30.5");

  // The same in a correction.
  await desk.keyboard.press("Alt+C");
  const dialog = desk.getByRole("dialog");
  await dialog.getByRole("textbox", { name: "Time" }).fill("645");
  await dialog.getByRole("textbox", { name: "Reason" }).fill("misread");
  await desk.keyboard.press("Enter");
  await expect(doubt(desk)).toContainText("6:45");
  await desk.keyboard.press("m");
  await expect(dialog).toBeHidden();
  expect((await attemptsAt(desk, "endurance"))[0]).toEqual({
    bib: 1,
    seen: { finished: true, time: 405_000 },
    stands: true,
  });
});
