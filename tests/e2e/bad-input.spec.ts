import { truncate, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { expect, type Page } from "@playwright/test";
import { test } from "./fixture.ts";
import { callDoor, goTo } from "./page.ts";
import { answerOpenDialog, bringSheet } from "./sheets.ts";
import { entryOf, fieldOf, isRefused, isSaved, key, takeUp } from "./stations.ts";

/** Walk-ups with the bibs 1 to `count` on an open day; the desk is where its tape of places begins. */
async function openDay(desk: Page, count: number): Promise<void> {
  await callDoor(desk, "day.create", { sure: true, date: "2026-03-14", title: "Spring testing day" });
  await callDoor(desk, "day.open", { sure: true });
  for (let bib = 1; bib <= count; bib += 1) {
    const outcome = { bib, leaveOut: [], board: "bib", share: false, guardianConsent: false, by: "QA" };
    const who = { league: "Gravel Moon", name: `Skater ${bib}`, number: "", birthYear: 1990 };
    await callDoor(desk, "checkIn.walkUp", { ...who, ...outcome });
  }
  await desk.reload();
  await desk.getByRole("link", { name: "Go to your testing day" }).click();
}

async function sayInitials(desk: Page): Promise<void> {
  await expect(desk.getByRole("textbox", { name: "Your initials" })).toBeFocused();
  await desk.keyboard.type("mk");
  await desk.keyboard.press("Enter");
}

/** What stands at a station: of each attempt who keyed it and what was seen. */
async function attemptsAt(desk: Page, code: string): Promise<unknown[]> {
  const input = encodeURIComponent(JSON.stringify({ test: code, lengths: "cm" }));
  const told = await desk.evaluate(
    (sent) => fetch(`/trpc/station.view?input=${sent}`).then((response) => response.json()),
    input,
  );
  return told.result.data.recent.map(
    ({ attempt: { by, seen } }: { attempt: { by: string; seen: unknown } }) => ({
      by,
      seen,
    }),
  );
}

test("files that are no sheet are refused at once, and nothing goes in", async ({ tapeline }) => {
  const { desk, folder } = tapeline;
  await openDay(desk, 0);
  await test.step("3 GB", async () => {
    const file = join(folder, "huge.csv");
    await writeFile(file, "league,name\n");
    // Its size alone is looked at: Node reads no file of more than 2 GiB, so that reading it would be told as a failure.
    await truncate(file, 3 * 1024 ** 3);
    await answerOpenDialog(tapeline, file);
    await goTo(desk, "Import");
    await desk.getByRole("button", { name: "Choose a file" }).click();
    await expect(desk.getByRole("alert")).toContainText("This file is larger than 20 MB");
    await desk.getByRole("button", { name: "Choose another file" }).click();
  });
  // The first bytes of each: PNG as in its specification (W3C, section 5.2), a zip's "PK" of a workbook, RFC 4180 quotes.
  const files: readonly (readonly [string, string | Uint8Array, string])[] = [
    ["empty.csv", "", "There is nothing in this file."],
    ["picture.csv", Uint8Array.of(137, 80, 78, 71, 13, 10, 26, 10, 0, 0, 0, 13), "This is a picture"],
    ["workbook.csv", Uint8Array.of(80, 75, 3, 4, 20, 0, 6, 0), "This workbook is damaged."],
    ["wide.csv", `${Array.from({ length: 300 }, (_none, index) => `c${index}`).join()}\n`, "has 300 columns"],
    ["nul.csv", "league,name\nGravel Moon,An\0vil\n", "There are NUL characters in this file"],
  ];
  for (const [name, content, sentence] of files) {
    await test.step(name, async () => {
      await bringSheet(tapeline, name, content);
      await expect(desk.getByRole("alert")).toContainText(sentence);
      await expect(desk.getByText("Nothing was imported, and nothing is lost.")).toBeVisible();
      await desk.getByRole("button", { name: "Choose another file" }).click();
    });
  }
  await test.step("a lone quote keeps its own row back", async () => {
    await bringSheet(tapeline, "quote.csv", 'league,name\nGravel Moon,"Anvil\nGravel Moon,Brine\n');
    await expect(desk.getByText(/quotation mark/i).first()).toBeVisible();
  });
  await goTo(desk, "Overview");
  await expect(desk.getByText("Next: import the rosters.")).toBeVisible();
});

test("a header without league asks which column it is, and the choice is enough", async ({ tapeline }) => {
  const { desk } = tapeline;
  await openDay(desk, 0);
  await bringSheet(tapeline, "club.csv", "Crew,Name\nGravel Moon,Anvil Sparrow\nGravel Moon,Brine Kestrel\n");
  await expect(desk.getByRole("alert")).toContainText("No column is headed “league”.");
  await expect(desk.getByRole("button", { name: /^Import \d/ })).toHaveCount(0);
  await desk.getByRole("combobox", { name: "League" }).selectOption("Crew");
  await desk.getByRole("button", { name: "Import 2 rows" }).click();
  await expect(desk.getByRole("heading", { name: "2 rows imported" })).toBeVisible();
});

test("a value that can't be is told beside its field, and stays typed", async ({ tapeline: { desk } }) => {
  await openDay(desk, 1);
  await takeUp(desk, "Strength", 1, "Skater 1");
  for (const typed of ["-1", "1e9", "NaN", "1,5"]) {
    await fieldOf(desk, "Top beats in total").fill(typed);
    await fieldOf(desk, "Missed reps").fill("0");
    await fieldOf(desk, "Missed reps").press("Enter");
    await isRefused(desk, "Top beats in total", typed, /Write a whole number|decimal point|too large/);
  }
  // Counted, but not by anybody: refused by the desk itself once the initials are there.
  await fieldOf(desk, "Top beats in total").fill("301");
  await fieldOf(desk, "Missed reps").press("Enter");
  await sayInitials(desk);
  await expect(entryOf(desk).getByRole("alert")).toContainText("301 reps would take");
  await expect(fieldOf(desk, "Top beats in total")).toHaveValue("301");
  expect(await attemptsAt(desk, "push-up")).toEqual([]);
});

test("two who enter for the same bib at once: the second is told, and keeps what was typed", async ({
  tapeline: { desk },
}) => {
  await openDay(desk, 1);
  await takeUp(desk, "Strength", 1, "Skater 1");
  await fieldOf(desk, "Top beats in total").fill("24");
  await fieldOf(desk, "Missed reps").fill("1");
  // The other one is quicker: through the same door, while the fields here are filled.
  const seen = { how: "tally", reps: 22, offAtEnd: 0 };
  await callDoor(desk, "station.enter", {
    ...{ athleteId: 1, test: "push-up", variant: "full", by: "OT", sure: true },
    attempts: [{ id: crypto.randomUUID(), seen }],
  });
  await fieldOf(desk, "Missed reps").press("Enter");
  await sayInitials(desk);
  await expect(
    entryOf(desk).getByText("A push-up result is already entered (by OT). If it is wrong, correct that one."),
  ).toBeVisible();
  await expect(fieldOf(desk, "Top beats in total")).toHaveValue("24");
  await expect(fieldOf(desk, "Missed reps")).toHaveValue("1");
  expect(await attemptsAt(desk, "push-up")).toEqual([{ by: "OT", seen }]);
});

/** Lets the next entries reach the store and loses their answers, as a cable that is pulled between the two. */
async function loseAnswers(desk: Page, count: number): Promise<void> {
  await desk.evaluate((times) => {
    const send = window.fetch;
    let left = times;
    window.fetch = async (input, init) => {
      const answer = await send(input, init);
      if (left === 0 || !String(input).includes("station.enter")) return answer;
      left -= 1;
      throw new TypeError("the answer was lost");
    };
  }, count);
}

test("an answer that was lost once is asked for again by itself, and nothing is entered twice", async ({
  tapeline: { desk },
}) => {
  await openDay(desk, 1);
  await takeUp(desk, "Strength", 1, "Skater 1");
  await loseAnswers(desk, 1);
  await key(desk, { "Top beats in total": "24", "Missed reps": "1" });
  await sayInitials(desk);
  await isSaved(desk, "23 reps", "First result");
  expect(await attemptsAt(desk, "push-up")).toHaveLength(1);
});

test("when no answer comes at all it says so, and a second try by hand saves once", async ({
  tapeline: { desk },
}) => {
  await openDay(desk, 1);
  await takeUp(desk, "Strength", 1, "Skater 1");
  // The entry itself and both tries that the window makes by itself.
  await loseAnswers(desk, 3);
  await key(desk, { "Top beats in total": "24", "Missed reps": "1" });
  await sayInitials(desk);
  await expect(entryOf(desk).getByRole("alert")).toContainText("so this may not be saved");
  await expect(fieldOf(desk, "Top beats in total")).toHaveValue("24");
  await expect(fieldOf(desk, "Missed reps")).toHaveValue("1");
  await desk.getByRole("button", { name: /^Try again/ }).click();
  await isSaved(desk, "23 reps", "First result");
  expect(await attemptsAt(desk, "push-up")).toHaveLength(1);
});
