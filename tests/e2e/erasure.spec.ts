import { readdir, readFile, stat } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join, relative } from "node:path";
import { expect, type Page } from "@playwright/test";
import { expectForEverybody } from "./axe.ts";
import { test } from "./fixture.ts";
import { callDoor, choose, goTo } from "./page.ts";
import { readPdf } from "./pdf.ts";
import type { Tapeline } from "./session.ts";
import { takeSheet } from "./sheets.ts";
import { isSaved, key, takeUp } from "./stations.ts";

/** Names that stand nowhere else in the world; the number as JSON, pages and the folded name before it would have it. */
const canary = { name: "Zarquonix Vebbelstrom", number: "8713", league: "Quarzheim Xylos" };
const traces = ["Zarquonix", "zarquonix", "Vebbelstrom", "vebbelstrom", "Quarzheim", "quarzheim", '"8713"'];
const roster = `league,name,number,birth_year,board,share
${canary.league},${canary.name},${canary.number},1991,name,yes
Foundry Town,Ada Rill,12,1993,name,yes
`;
/** From before, so that the mark of the day is a best and stands on the board at once. */
const past = `league,number,name,date,test,variant,mark
${canary.league},${canary.number},${canary.name},2026-02-01,push-up,full,15
`;

test("no byte of the data folder holds somebody who was erased, whatever they did before", async ({
  tapeline,
}) => {
  const begun = Date.now();
  const { desk } = tapeline;
  const athleteId = await throughTheDay(tapeline);
  const board = await tapeline.openBoard();
  await expect(board.getByText(canary.name).first()).toBeVisible();
  await toPaper(tapeline, athleteId);
  // The search finds what is there: in the store or its log, while the app runs.
  expect(await filesWithTraces(tapeline.folder, begun)).not.toEqual([]);

  await desk.evaluate((id) => {
    location.hash = `/athletes/${id}`;
  }, athleteId);
  await eraseOnPage(desk);
  await expect(board.getByText(canary.name)).toHaveCount(0);
  await goTo(desk, "Check-in");
  await desk.getByRole("combobox", { name: "Who is it?" }).fill("zarquonix");
  await expect(desk.getByText("No match for “zarquonix”.")).toBeVisible();
  await desk.getByRole("combobox", { name: "Who is it?" }).fill("");
  expect(await filesWithTraces(tapeline.folder, begun)).toEqual([]);

  await tapeline.restart(async () => {
    expect(await filesWithTraces(tapeline.folder, begun)).toEqual([]);
  });
  await goTo(tapeline.desk, "Athletes");
  await expect(tapeline.desk.getByText("1 athlete", { exact: true })).toBeVisible();
  const log = tapeline.desk.getByRole("region", { name: "Deletions" }).first();
  await expect(log).toContainText("QA");
  await expect(log.getByText("rewritten", { exact: true })).toBeVisible();
});

test("details are corrected, a conflict is told, and a slip of the keys is removed", async ({
  tapeline: { desk },
}) => {
  await callDoor(desk, "day.create", { sure: true, date: "2026-11-14", title: "A day" });
  await callDoor(desk, "day.open", { sure: true });
  const answers = { bib: null, leaveOut: [], board: "bib", share: false, guardianConsent: false, by: "QA" };
  const walkUp = (name: string, number: string) =>
    callDoor(desk, "checkIn.walkUp", { ...answers, league: "Alder", name, number, birthYear: null });
  await walkUp("Bo Crank", "12");
  const { athleteId } = (await walkUp("Adda Ril", "7")) as { athleteId: number };
  await desk.evaluate((id) => {
    location.hash = `/athletes/${id}`;
  }, athleteId);
  await desk.getByRole("button", { name: "Correct the details" }).click();
  const dialog = desk.getByRole("alertdialog", { name: "Correct the details" });
  await dialog.getByRole("textbox", { name: "Derby name" }).fill("Ada Rill");
  await dialog.getByRole("textbox", { name: "Number" }).fill("12");
  await dialog.getByRole("button", { name: "Save" }).click();
  await expect(dialog.getByRole("alert")).toContainText("Number 12 of Alder is Bo Crank.");
  await expect(dialog.getByRole("textbox", { name: "Derby name" })).toHaveValue("Ada Rill");
  await expectForEverybody(desk);
  await dialog.getByRole("textbox", { name: "Number" }).fill("07");
  await dialog.getByRole("button", { name: "Save" }).click();
  await expect(desk.getByRole("heading", { level: 1, name: "Ada Rill" })).toBeVisible();
  await expect(desk.getByText("Number 07")).toBeVisible();

  await desk.getByRole("button", { name: "Remove: added by mistake" }).click();
  await desk.getByRole("alertdialog").getByRole("button", { name: "Remove" }).click();
  await expect(desk.getByText("1 athlete", { exact: true })).toBeVisible();
});

/** A sheet, the table at the door, and a station, by hand; returns the id. */
async function throughTheDay({ desk }: Tapeline): Promise<number> {
  await callDoor(desk, "day.create", { sure: true, date: "2026-11-14", title: "Autumn testing day" });
  await callDoor(desk, "day.open", { sure: true });
  await takeSheet(desk, "roster", roster);
  await takeSheet(desk, "past", past);
  await goTo(desk, "Check-in");
  const search = desk.getByRole("combobox", { name: "Who is it?" });
  await search.fill("zarquonx");
  await expect(desk.getByRole("option", { name: canary.name })).toBeVisible();
  await search.press("Enter");
  await desk.getByRole("button", { name: "No to all seven" }).click();
  await choose(desk, "“How may the big screen in the hall show you?”", "By name");
  await choose(desk, "“May your results be published without your name, also on the internet?”", "Yes");
  await desk.keyboard.press("Control+Enter");
  await desk.getByRole("textbox", { name: "Your initials" }).fill("qa");
  await desk.keyboard.press("Enter");
  await expect(desk.getByRole("heading", { name: `${canary.name} is checked in` })).toBeVisible();
  await takeUp(desk, "Strength", 1, canary.name);
  await key(desk, { "Top beats in total": "23", "Missed reps": "3" });
  await isSaved(desk, "20 reps");
  const found = await desk.evaluate(() =>
    fetch(`/trpc/people.list?input=${encodeURIComponent('{"query":"zarquonix"}')}`).then((answer) =>
      answer.json(),
    ),
  );
  return found.result.data.people[0].athleteId as number;
}

/** All that is held, saved as a file and as a page; both outside the data folder, and gone with the test. */
async function toPaper({ app, desk }: Tapeline, athleteId: number): Promise<void> {
  const folder = test.info().outputPath();
  await desk.evaluate((id) => {
    location.hash = `/athletes/${id}`;
  }, athleteId);
  for (const [button, name] of [
    ["Save as file (JSON)", "held.json"],
    ["Save as PDF", "held.pdf"],
  ] as const) {
    await app.evaluate(
      ({ dialog }, filePath) => {
        Object.assign(dialog, { showSaveDialog: async () => ({ canceled: false, filePath }) });
      },
      join(folder, name),
    );
    await desk.getByRole("button", { name: button }).click();
    await expect(desk.getByText(`Saved as ${name}.`)).toBeVisible();
  }
  const held = JSON.parse(await readFile(join(folder, "held.json"), "utf8"));
  expect(held).toMatchObject({ format: "tapeline-held", version: 1, person: canary });
  const text = (await readPdf(join(folder, "held.pdf"))).map((page) => page.text).join(" ");
  for (const words of [
    canary.name,
    canary.league,
    "23 top beats in total, 3 missed at the end",
    "20 reps",
    "QA",
  ]) {
    expect(text).toContain(words);
  }
  expect(text).not.toContain("Ada Rill");
}

async function eraseOnPage(desk: Page): Promise<void> {
  await desk.getByRole("button", { name: "Delete this person's data" }).click();
  const dialog = desk.getByRole("alertdialog", { name: `Delete all data about ${canary.name}?` });
  await expect(dialog).toContainText("1 result stays without a name");
  await expect(dialog).toContainText("copies of its data that somebody made by hand");
  await expect(dialog).toContainText("with their name on it brings them back");
  await expectForEverybody(desk);
  const box = dialog.getByRole("textbox");
  await box.fill("Zarquonix");
  await box.press("Enter");
  await expect(dialog).toContainText(`Type the name, ${canary.name}, or the number`);
  await box.fill("zarquonix vebbelstrom");
  await box.press("Enter");
  await expect(desk.getByText("Deleted. The data file was rewritten")).toBeVisible();
  await expect(desk.getByRole("heading", { level: 1, name: "Athletes" })).toBeVisible();
}

/** What a browser and SQLite call their files in the system's folder for temporary files. */
const temporary = /^(?:\.org\.chromium|\.com\.google|scoped_dir|etilqs_|electron|chrom)/i;

/** Every file under the data folder, and every temporary one since the test began, in which a trace stands. */
async function filesWithTraces(folder: string, since: number): Promise<string[]> {
  const own = await filesUnder(folder);
  const others = (await readdir(tmpdir())).filter((name) => temporary.test(name));
  const temporaries = (await Promise.all(others.map((name) => filesUnder(join(tmpdir(), name))))).flat();
  const found: string[] = [];
  for (const file of [...own, ...temporaries]) {
    const bytes = await readIfThere(file, own.includes(file) ? 0 : since);
    const names = traces.filter(
      (trace) => bytes.includes(Buffer.from(trace)) || bytes.includes(Buffer.from(trace, "utf16le")),
    );
    if (names.length > 0) found.push(`${relative(folder, file)}: ${names.join(", ")}`);
  }
  return found;
}

async function filesUnder(path: string): Promise<string[]> {
  const about = await stat(path).catch(() => null);
  if (about === null) return [];
  if (!about.isDirectory()) return about.isFile() ? [path] : [];
  const names = await readdir(path).catch(() => []);
  return (await Promise.all(names.map((name) => filesUnder(join(path, name))))).flat();
}

/** A browser takes files away while one looks. */
async function readIfThere(file: string, since: number): Promise<Buffer> {
  const about = await stat(file).catch(() => null);
  if (about === null || about.mtimeMs < since) return Buffer.alloc(0);
  return readFile(file).catch(() => Buffer.alloc(0));
}
