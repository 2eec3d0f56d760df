import { writeFile } from "node:fs/promises";
import { join } from "node:path";
import { expect, type Page } from "@playwright/test";
import { expectForEverybody } from "./axe.ts";
import { test } from "./fixture.ts";
import { callDoor, goTo } from "./page.ts";
import { readPdf } from "./pdf.ts";
import { answerOpenDialog, answerSaveDialog } from "./sheets.ts";

/** What the station counted, by bib from 1; RS counts three more of each but the last. */
const counted = [18, 22, 25, 31, 27, 40];

/** A day on which six athletes have done push-ups. */
async function countedDay(desk: Page): Promise<void> {
  await callDoor(desk, "day.create", { sure: true, date: "2026-11-14", title: "Autumn testing day" });
  await callDoor(desk, "day.open", { sure: true });
  const answers = {
    board: "bib",
    share: false,
    guardianConsent: false,
    by: "CH",
    birthYear: 1990,
    leaveOut: [],
  };
  for (const [index, reps] of counted.entries()) {
    const who = {
      league: "Gravel Moon",
      name: `Anvil Sparrow ${"ABCDEF"[index]}`,
      number: String(index + 7),
    };
    const admitted = await callDoor(desk, "checkIn.walkUp", { ...who, ...answers, bib: index + 1 });
    const { athleteId } = admitted as { athleteId: number };
    const attempts = [{ id: crypto.randomUUID(), seen: { how: "tally", reps, offAtEnd: 0 } }];
    const entry = { athleteId, test: "push-up", variant: "full", by: "QA", sure: true, attempts };
    await callDoor(desk, "station.enter", entry);
  }
}

test("plan a study, bring in the second judge's sheet, see what it shows, and print it", async ({
  tapeline,
}) => {
  const { desk, folder } = tapeline;
  const refused: string[] = [];
  desk.on("console", (message) => {
    if (/Content Security Policy|Refused to|Trusted/.test(message.text())) refused.push(message.text());
  });
  await countedDay(desk);
  await desk.reload();
  await desk.getByRole("link", { name: "Go to your testing day" }).click();
  await desk.getByRole("link", { name: "How much is normal variation?" }).click();
  await desk.getByRole("link", { name: "Measuring studies" }).click();
  await expect(desk.getByRole("heading", { name: "Measuring studies" })).toBeVisible();
  await expectForEverybody(desk);

  await expect(desk.getByRole("combobox", { name: "First judge: who entered the results?" })).toHaveText(
    "QA (6 results)",
  );
  await desk.getByRole("textbox", { name: "Judge 2: initials" }).fill("rs");
  await desk.getByRole("button", { name: "Plan the study" }).click();
  await desk
    .getByRole("textbox", { name: /initials/i })
    .last()
    .fill("QA");
  await desk.keyboard.press("Enter");
  await expect(desk.getByRole("heading", { name: "Judges: Cadence push-up, full" })).toBeVisible();
  await expect(desk.getByText("RS: no reading yet.")).toBeVisible();
  await expectForEverybody(desk);

  const file = join(folder, "rs.csv");
  const rows = counted.map((reps, index) => `${index + 1},${index === 5 ? reps + 2 : reps + 3}`);
  await writeFile(file, ["bib,Jury B", ...rows, "99,20"].join("\n"));
  await answerOpenDialog(tapeline, file);
  await desk.getByRole("button", { name: "Choose a sheet" }).click();
  // No header says which column has the readings: the piece of other sheets asks for it.
  await expect(desk.getByRole("alert")).toContainText("Choose the column that has the result.");
  await expect(desk.getByRole("button", { name: /^Import/ })).toHaveCount(0);
  await expectForEverybody(desk);
  await desk.getByRole("combobox", { name: "Result" }).selectOption("Jury B");
  await expect(desk.getByText("6 new readings of RS")).toBeVisible();
  await expect(desk.getByText(/^Line 8: Nobody had the bib 99/)).toBeVisible();
  await expectForEverybody(desk);
  await desk.getByRole("button", { name: "Import 6 readings" }).click();
  await expect(desk.getByText("6 readings of RS are imported.")).toBeVisible();

  const biases = desk.getByRole("region", { name: "Who is more generous, and who is stricter" }).last();
  await expect(biases.getByRole("row", { name: /^RS against QA/ })).toContainText("+2.8 reps");
  await expect(biases.getByRole("row", { name: /^QA/ })).toHaveCount(0);
  await expect(biases.getByRole("row", { name: /^RS/ })).toContainText(
    "More generous, more than chance explains: a result judged by RS reads about 2.8 reps higher",
  );
  await expect(desk.getByRole("img", { name: /^Picture of 6 athletes/ })).toBeVisible();
  await expectForEverybody(desk);

  await desk.getByRole("button", { name: "Correct a reading of Anvil Sparrow F" }).click();
  const dialog = desk.getByRole("alertdialog");
  await expect(dialog.getByText("RS read 42 reps.")).toBeVisible();
  await expect(dialog.getByRole("button", { name: "Take this reading out" })).toBeVisible();
  await dialog.getByRole("textbox", { name: "Right result" }).fill("43");
  await desk.keyboard.press("Enter");
  await expect(dialog.getByRole("textbox", { name: "Why?" })).toBeFocused();
  await desk.keyboard.type("misread");
  await desk.keyboard.press("Enter");
  await expect(desk.getByText("The reading of Anvil Sparrow F is changed.")).toBeVisible();
  await expect(biases.getByRole("row", { name: /^RS/ })).toContainText("+3 reps");

  const pdf = join(folder, "study.pdf");
  await answerSaveDialog(tapeline, pdf);
  await desk.getByRole("button", { name: "Save as PDF" }).click();
  await expect(desk.getByText(/study\.pdf/)).toBeVisible();
  const pages = await readPdf(pdf);
  expect(pages).toHaveLength(1);
  expect(pages[0]?.text).toContain("more than chance explains");
  expect(pages[0]?.text).not.toContain("Anvil");

  await desk.getByRole("link", { name: "Back to all studies" }).click();
  await expect(desk.getByRole("link", { name: "Judges: Cadence push-up, full" })).toBeVisible();
  await goTo(desk, "Athletes");
  expect(refused).toEqual([]);
});
