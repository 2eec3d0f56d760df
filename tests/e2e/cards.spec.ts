import { readdir } from "node:fs/promises";
import { join } from "node:path";
import { expect, type Page } from "@playwright/test";
import { languages } from "../../electron/domain/languages.ts";
import type { Bridge, PrintPaper } from "../../electron/shell/bridge/bridge-types.ts";
import { expectForEverybody } from "./axe.ts";
import {
  addLongestNamed,
  answerPrint,
  answerSave,
  crashNextPage,
  holdUpNextPage,
  layoutCount,
  peopleWithCards,
} from "./cards-day.ts";
import { test as alone } from "./fixture.ts";
import { callDoor } from "./page.ts";
import { type PdfPage, readPdf, readTags } from "./pdf.ts";
import type { Tapeline } from "./session.ts";
import { test } from "./shared.ts";

/** Whole points (1/72 in). Source: ISO 216, A5 148 × 210 mm, A4 210 × 297 mm; half of 8.5 × 11 in, and that itself. */
const sizes = {
  a5: [420, 595],
  "half-letter": [396, 612],
  "a4-two": [842, 595],
  "letter-two": [792, 612],
} as const satisfies Partial<Record<PrintPaper, readonly [number, number]>>;
type CardPaper = keyof typeof sizes;

const caution =
  "Stop at once if there is pain, chest pressure, dizziness, nausea, palpitations, or breathlessness out of proportion to the work.";

test("everybody's cards are one PDF, a card a page, with words that can be selected and are tagged", async ({
  tapeline,
}) => {
  await callDoor(tapeline.desk, "day.openDemo");
  await addLongestNamed(tapeline.desk);
  const { day, people } = await peopleWithCards(tapeline.desk);
  const pages = await pdf(tapeline, `/print/cards/${day.id}/all`, "a5");
  expect(pages.map(sizeOf)).toEqual(people.map(() => sizes.a5));
  for (const [index, { name, number, league, bib }] of people.entries()) {
    const text = pages[index]?.text ?? "";
    for (const words of [name, number, league, `bib ${bib}`, "Your next test", caution]) {
      expect.soft(text, name).toContain(words);
    }
    // One card a page, and nobody else's name on it.
    expect.soft(text.split("What to work on"), name).toHaveLength(2);
    const others = people.filter((other) => !hasName(`${name} ${league}`, other.name));
    const strangers = others.filter((other) => hasName(text, other.name));
    expect.soft(strangers, name).toEqual([]);
    expect.soft(text, name).not.toMatch(/birth|born|under 18|\byears old/i);
  }
  const longest = pages.at(-1)?.text ?? "";
  for (const words of ["0000", "24 reps", "First result", "Also 31 reps on the knees", "29.75 landings"]) {
    expect(longest).toContain(words);
  }
  for (const words of [
    "42.7 cm",
    "12:09",
    "round 4, both feet down",
    "Not finished: full rounds 2, reps 35",
  ]) {
    expect(longest).toContain(words);
  }
  const { marked, roles } = await readTags(join(tapeline.folder, "a5.pdf"));
  expect(marked).toBe(true);
  expect(roles.filter((role) => role === "H1")).toHaveLength(1);
  expect(roles.filter((role) => role === "H2").length).toBeGreaterThanOrEqual(7);
  expect((await tapeline.blocked()).count).toBe(0);
});

test("two up, a pile that is cut in the middle is in order", { tag: "@sweep" }, async ({ tapeline }) => {
  await callDoor(tapeline.desk, "day.openDemo");
  const { day, people, leagues } = await peopleWithCards(tapeline.desk);
  const league = leagues.find(({ count }) => count % 2 === 1) ?? leagues[0];
  const names = people.filter(({ leagueId }) => leagueId === league?.id).map(({ name }) => name);
  const path = `/print/cards/${day.id}/league-${league?.id}`;
  const half = Math.ceil(names.length / 2);
  for (const paper of ["a4-two", "letter-two"] as const) {
    const pages = await pdf(tapeline, path, paper);
    expect(pages.map(sizeOf), paper).toEqual(names.slice(0, half).map(() => sizes[paper]));
    for (const [index, { text }] of pages.entries()) {
      const [left = "", right] = [names[index], names[half + index]];
      expect(text).toContain(left);
      if (right !== undefined) expect(text.indexOf(right)).toBeGreaterThan(text.indexOf(left));
    }
  }
  const single = await pdf(tapeline, path, "half-letter");
  expect(single.map(sizeOf)).toEqual(names.map(() => sizes["half-letter"]));
});

for (const language of languages) {
  test(`nothing of a card is cut off, on any paper, in ${language}`, { tag: "@sweep" }, async ({
    tapeline: { desk },
  }) => {
    await callDoor(desk, "language.choose", { language });
    await expect(desk.locator("html")).toHaveAttribute("lang", language);
    await callDoor(desk, "day.openDemo");
    const longest = await addLongestNamed(desk);
    const { day, people } = await peopleWithCards(desk);
    const layouts = await layoutCount(desk);
    for (const paper of ["a5", "half-letter"] as const) {
      const before = await layouts();
      await goTo(desk, `/print/cards/${day.id}/all/${paper}`);
      await expect(desk.locator("article")).toHaveCount(people.length);
      await desk.evaluate(() => document.fonts.ready);
      // Cards are measured together: one by one, each laid out the whole page again.
      expect((await layouts()) - before, paper).toBeLessThan(people.length);
      expect(await cutOff(desk), paper).toEqual([]);
    }
    for (const paper of ["a4-two", "letter-two"] as const) {
      await goTo(desk, `/print/cards/${day.id}/athlete-${longest}/${paper}`);
      await expect(desk.locator("article")).toHaveCount(1);
      expect(await cutOff(desk), paper).toEqual([]);
    }
    await callDoor(desk, "language.choose", { language: "en" });
  });
}

test("from the day to a league's file and to the printer, by the keyboard", async ({ tapeline }) => {
  const { desk, app, folder } = tapeline;
  await callDoor(desk, "day.openDemo");
  const { day, leagues } = await peopleWithCards(desk);
  const [league] = leagues;
  await goTo(desk, "/day");
  await desk.getByRole("link", { name: "Cards to take home" }).press("Enter");
  await expect(desk.locator("article")).toHaveCount(1);
  await expectForEverybody(desk);
  await desk.getByRole("link", { name: `${league?.name} (${league?.count})` }).press("Enter");
  await expect(desk.getByText(`Page 1 of ${league?.count}`)).toBeVisible();
  await desk.getByRole("radio", { name: "A4, two up" }).press("Space");
  await expect(desk.getByText("put the right half under the left")).toBeVisible();

  // How many pages come is said before anything is on its way.
  const sheets = Math.ceil((league?.count ?? 0) / 2);
  await expect(desk.getByRole("button", { name: `Print ${sheets} pages` })).toBeVisible();
  await answerSave(app, join(folder, "league.pdf"));
  await desk.getByRole("button", { name: "Save as PDF" }).press("Enter");
  await expect(desk.getByText(`${league?.count} cards saved as league.pdf.`)).toBeVisible();
  expect(await app.evaluate(() => Reflect.get(globalThis, "askedFor"))).toBe(
    `Cards ${day.date} ${league?.name} A4 two up.pdf`,
  );
  await answerPrint(app, true, "");
  await desk.getByRole("button", { name: "Print" }).press("Enter");
  await expect(desk.getByText("Sent to the printer.")).toBeVisible();
  expect(await app.evaluate(() => Reflect.get(globalThis, "printed"))).toEqual({
    url: `app://desk/#/print/cards/${day.id}/league-${league?.id}/a4-two`,
    options: {
      printBackground: true,
      pageSize: "A4",
      margins: { marginType: "none" },
      landscape: true,
    },
  });
  // One athlete by a scrap of the name, on a paper that has no name of its own.
  await desk.getByRole("searchbox", { name: "Find one athlete" }).fill("ash tue");
  await desk.getByRole("link", { name: "Ash Tuesday" }).press("Enter");
  await desk.getByRole("radio", { name: "Half Letter" }).press("Space");
  await expect(desk.locator("article h1")).toHaveText("Ash Tuesday");
  await answerPrint(app, false, "Print job failed");
  await desk.getByRole("button", { name: "Print" }).press("Enter");
  await expect(desk.getByText("The cards could not be printed.")).toBeVisible();
  expect(await app.evaluate(() => Reflect.get(globalThis, "printed"))).toMatchObject({
    options: { pageSize: { width: 139_700, height: 215_900 } },
  });
});

alone("a job is counted, can be stopped, and says so when it fails", async ({ tapeline }) => {
  const { desk, app, folder } = tapeline;
  await callDoor(desk, "day.openDemo");
  const { people } = await peopleWithCards(desk);
  await goTo(desk, "/cards");
  await answerSave(app, join(folder, "stopped.pdf"));
  await holdUpNextPage(app);
  await desk.getByRole("button", { name: "Save as PDF" }).click();
  await expect(desk.getByText(new RegExp(`^\\d+ of ${people.length} cards$`))).toBeVisible();
  await desk.getByRole("button", { name: "Cancel" }).click();
  await expect(desk.getByText("Nothing was saved.")).toBeVisible();
  await expect(desk.getByRole("progressbar")).toHaveCount(0);

  await crashNextPage(app);
  await desk.getByRole("button", { name: "Save as PDF" }).click();
  await expect(desk.getByText("Not saved: the cards could not be written.")).toBeVisible();
  await desk.getByRole("button", { name: "Close this message" }).click();
  await answerSave(app, join(folder, "gone", "x.pdf"));
  await goTo(desk, `/cards/current/athlete-${people[0]?.athleteId}`);
  await desk.getByRole("button", { name: "Save as PDF" }).click();
  await expect(desk.getByText("Not saved: the cards could not be written.")).toBeVisible();
  // Nothing half done is left behind, neither a file nor a window.
  expect((await readdir(folder)).filter((file) => /pdf|part$/.test(file))).toEqual([]);
  expect(await app.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows().length)).toBe(1);
});

/** Whether a text has the name as words of its own: "Bo" is not in "Both". */
function hasName(text: string, name: string): boolean {
  const literal = name.replaceAll(/[$()*+.?[\\\]^{|}]/g, "\\$&");
  return new RegExp(`(?<![\\p{L}])${literal}(?![\\p{L}])`, "u").test(text);
}

function sizeOf({ width, height }: PdfPage): readonly number[] {
  return [width, height];
}

async function goTo(desk: Page, path: string): Promise<void> {
  await desk.evaluate((hash) => {
    location.hash = hash;
  }, path);
}

/** Saves a print page through the bridge as the screen does, and reads the file. */
async function pdf(tapeline: Tapeline, path: string, paper: CardPaper): Promise<readonly PdfPage[]> {
  const file = join(tapeline.folder, `${paper}.pdf`);
  await answerSave(tapeline.app, file);
  const outcome = await tapeline.desk.evaluate(
    ([asked, size]) =>
      (window as unknown as { bridge: Bridge }).bridge.savePdf({
        ...{ path: asked, paper: size, suggestedName: "x.pdf" },
      }),
    [path, paper] as const,
  );
  expect(outcome).toEqual({ saved: true, name: `${paper}.pdf` });
  return readPdf(file);
}

/** What lies outside its card, by more than a hair, with whose card it is. */
function cutOff(desk: Page): Promise<string[]> {
  return desk.locator("article").evaluateAll((articles) =>
    articles.flatMap((article) => {
      const edge = article.getBoundingClientRect();
      const parts = [...article.querySelectorAll("*")].filter((part) => part.closest(".unseen") === null);
      return parts.flatMap((part) => {
        const { right, bottom, width, height } = part.getBoundingClientRect();
        const inside = right <= edge.right + 0.5 && bottom <= edge.bottom + 0.5;
        const shown = width > 0 && height > 0;
        return inside || !shown ? [] : `${article.querySelector("h1")?.textContent}: ${part.textContent}`;
      });
    }),
  );
}
