import { expect, type Page } from "@playwright/test";
import { test } from "./fixture.ts";
import { attemptsAt, field, goToPaper, key, openStation } from "./paper.ts";

const card = (desk: Page) =>
  desk.getByRole("region", { name: "Enter a result" }).getByRole("status").filter({ hasText: "Bib 1" });

async function enterFifteen(desk: Page): Promise<void> {
  await openStation(desk, "push-up", 2);
  await key(
    desk,
    ["Bib", "1"],
    ["Top beats in total", "15"],
    ["Missed reps at the end", "0"],
    ["Your initials", "mk"],
  );
  await expect(card(desk)).toContainText("15 reps");
}

test("after a correction the card shows what is stored, and the next correction opens that", async ({
  tapeline: { desk },
}) => {
  await enterFifteen(desk);
  await desk.keyboard.press("Alt+C");
  const dialog = desk.getByRole("dialog");
  // Enter does what the button says: it corrects, and asks for the reason that is missing.
  await key(desk, ["Top beats in total", "16"]);
  await key(desk, ["Reason", "counted one twice"]);
  await expect(dialog).toBeHidden();
  await expect(card(desk)).toContainText("16 reps");
  await expect(card(desk)).not.toContainText("15 reps");
  await expect(card(desk)).toContainText("Corrected");
  await expect(desk.getByText(/^The correction is saved/)).toBeVisible();

  await desk.keyboard.press("Alt+C");
  await expect(dialog.getByRole("textbox", { name: "Top beats in total" })).toHaveValue("16");
  await dialog.getByRole("textbox", { name: "Top beats in total" }).fill("17");
  await dialog.getByRole("textbox", { name: "Reason" }).fill("once more");
  await desk.keyboard.press("Enter");
  await expect(dialog).toBeHidden();
  await expect(card(desk)).toContainText("17 reps");

  await desk.keyboard.press("Alt+C");
  await dialog.getByRole("textbox", { name: "Reason" }).fill("not this athlete");
  await dialog.getByRole("button", { name: /^It does not count/ }).click();
  await expect(dialog).toBeHidden();
  await expect(card(desk)).toContainText("Cancelled: not this athlete (MK)");
  await expect(card(desk)).not.toContainText("17 reps");
  expect((await attemptsAt(desk, "push-up")).map(({ stands }) => stands)).toEqual([false, false, false]);
});

test("an open correction is not left by the keys of other screens, and Esc asks first", async ({
  tapeline: { desk },
}) => {
  await enterFifteen(desk);
  await desk.keyboard.press("Alt+C");
  const dialog = desk.getByRole("dialog");
  const reps = dialog.getByRole("textbox", { name: "Top beats in total" });
  await reps.fill("19");
  for (const keys of ["Alt+4", "Alt+L", "Alt+N", "Alt+R"]) {
    await desk.keyboard.press(keys);
    await expect(reps).toHaveValue("19");
  }
  await desk.keyboard.press("Escape");
  const asked = dialog.getByRole("alert");
  await expect(asked).toContainText("not saved");
  await expect(asked.getByRole("button", { name: /^Go on correcting/ })).toBeFocused();
  await desk.keyboard.press("Escape");
  await expect(asked).toBeHidden();
  await expect(reps).toHaveValue("19");

  // Led away by something else, it stands there again.
  await desk.evaluate(() => {
    location.hash = "/station/core";
  });
  await expect(dialog).toBeHidden();
  await desk.evaluate(() => {
    location.hash = "/station/push-up";
  });
  await expect(reps).toHaveValue("19");
  await desk.keyboard.press("Escape");
  await desk.keyboard.press("d");
  await expect(dialog).toBeHidden();
  expect(await attemptsAt(desk, "push-up")).toHaveLength(1);
});

test("a half-typed entry is there again after another screen and after the live view", async ({
  tapeline: { desk },
}) => {
  await enterFifteen(desk);
  await key(desk, ["Bib", "2"], ["Top beats in total", "23"]);
  await expect(field(desk, "Missed reps at the end")).toBeFocused();
  await desk.keyboard.press("Alt+4");
  await expect(field(desk, "Bib")).toHaveValue("");
  await desk.keyboard.press("Alt+3");
  await expect(field(desk, "Top beats in total")).toHaveValue("23");
  await expect(field(desk, "Bib")).toHaveValue("2");
  await expect(field(desk, "Missed reps at the end")).toBeFocused();
  await desk.keyboard.press("Alt+L");
  await expect(desk.getByRole("button", { name: /^Call the next/ })).toBeVisible();
  await desk.keyboard.press("Alt+L");
  await expect(field(desk, "Top beats in total")).toHaveValue("23");
});

test("each line of the list shows its own jump, and the result that all of them make", async ({
  tapeline: { desk },
}) => {
  await openStation(desk, "push-up", 2);
  await goToPaper(desk, "vertical");
  const reach = ["Standing reach", "210"] as const;
  await key(desk, ["Bib", "1"], reach, ["Touch 1", "250"], ["Touch 2", "255"], ["Touch 3", "252"]);
  await key(desk, ["Your initials", "mk"]);
  const line = (touch: number) => desk.getByRole("listitem").filter({ hasText: `touch ${touch} cm` });
  // 250 − 210 = 40, 255 − 210 = 45 and 252 − 210 = 42; the best of them is the result.
  await expect(line(250)).toContainText("40 cmresult 45 cm");
  await expect(line(255)).toContainText("45 cmresult 45 cm");
  await expect(line(252)).toContainText("42 cmresult 45 cm");
});
