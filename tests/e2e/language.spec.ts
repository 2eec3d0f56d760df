import { join } from "node:path";
import { expect, type Page } from "@playwright/test";
import type { Bridge } from "../../electron/shell/bridge/bridge-types.ts";
import { expectForEverybody } from "./axe.ts";
import { englishOn } from "./english.ts";
import { test } from "./fixture.ts";
import { callDoor } from "./page.ts";
import { readPdf } from "./pdf.ts";

async function speaks(page: Page, language: string): Promise<void> {
  await expect(page.locator("html")).toHaveAttribute("lang", language);
}

async function goTo(desk: Page, path: string, title: string): Promise<void> {
  await desk.evaluate((hash) => {
    location.hash = hash;
  }, path);
  await expect(desk.getByRole("heading", { level: 1, name: title })).toBeVisible();
  await expect(desk.locator('[aria-busy="true"]')).toHaveCount(0);
}

/** The head stays one line high, and nothing reaches beyond the window's side. */
async function keepsItsLines(desk: Page): Promise<void> {
  const found = await desk.evaluate(() => ({
    beyond: document.documentElement.scrollWidth - document.documentElement.clientWidth,
    head: document.querySelector("header > div")?.clientHeight ?? 0,
    foot: document.querySelector("footer")?.clientHeight ?? 0,
  }));
  expect(found.beyond).toBe(0);
  expect(found.head).toBeLessThan(80);
  expect(found.foot).toBeLessThan(60);
}

test("desk, board and paper speak Spanish at once, English again at once, and as chosen after a restart", async ({
  tapeline,
}) => {
  const { desk } = tapeline;
  await speaks(desk, "en");
  await desk.getByRole("button", { name: "Español" }).press("Enter");
  await expect(desk.getByRole("heading", { level: 1, name: "Nueva jornada de pruebas" })).toBeVisible();
  await speaks(desk, "es");
  // The keyboard stays where it was, now on the way back.
  await expect(desk.getByRole("button", { name: "English" })).toBeFocused();
  expect(await englishOn(desk)).toEqual([]);

  await callDoor(desk, "day.openDemo");
  const board = await tapeline.openBoard();
  await speaks(board, "es");
  await expect(board.getByText("mejores marcas hoy")).toBeVisible();
  expect(await englishOn(board)).toEqual([]);
  for (const [path, title] of [
    ["/day", "Vista general de la jornada"],
    ["/check-in", "Registro"],
    ["/station/agility", "Salto en cuadrantes"],
    ["/athletes", "Atletas"],
  ] as const) {
    await goTo(desk, path, title);
    expect(await englishOn(desk), path).toEqual([]);
    await keepsItsLines(desk);
  }
  await expectForEverybody(desk);

  await desk.getByRole("button", { name: "English" }).click();
  await expect(desk.getByRole("heading", { level: 1, name: "Athletes" })).toBeVisible();
  await Promise.all([speaks(desk, "en"), speaks(board, "en")]);
  await expect(board.getByText("bests today")).toBeVisible();
  await desk.getByRole("button", { name: "Español" }).click();
  await Promise.all([speaks(desk, "es"), speaks(board, "es")]);

  await tapeline.restart();
  await speaks(tapeline.desk, "es");
  expect(await englishOn(tapeline.desk)).toEqual([]);
});

test("a Spanish desk writes a decimal comma and reads one at a station", async ({ tapeline }) => {
  const { desk } = tapeline;
  await callDoor(desk, "language.choose", { language: "es" });
  await speaks(desk, "es");
  await callDoor(desk, "day.create", { sure: true, date: "2026-03-14", title: "Marzo" });
  await callDoor(desk, "day.open", { sure: true });
  const who = { league: "Foundry Town", name: "Ash Velvet", number: "7", birthYear: 1995, bib: 1 };
  const agreed = { board: "name", share: true, guardianConsent: false, by: "QA" };
  await callDoor(desk, "checkIn.walkUp", { ...who, ...agreed, leaveOut: ["push-up", "agility"] });
  await goTo(desk, "/station/vertical", "Salto vertical");
  await desk.locator("main").press("Alt+l");
  await desk.getByRole("textbox", { name: "Dorsal", exact: true }).fill("1");
  await desk.keyboard.press("Enter");
  const reach = desk.getByRole("textbox", { name: /^Alcance de pie/ });
  await reach.fill("219,5");
  await desk.keyboard.press("Enter");
  await desk.keyboard.type("262");
  await desk.keyboard.press("Enter");
  await desk.keyboard.press("Enter");
  await desk.getByRole("textbox", { name: "Tus iniciales" }).fill("QA");
  await desk.keyboard.press("Enter");
  await expect(desk.getByText("42,5").first()).toBeVisible();
  await expect(desk.getByText("42.5")).toHaveCount(0);
  // What is known of the next touch is shown as it would be typed.
  await desk.getByRole("textbox", { name: "Dorsal", exact: true }).fill("1");
  await desk.keyboard.press("Enter");
  await expect(reach).toHaveValue("219,5");
});

test("sheets for the hall are Spanish too, one page each, with nothing cut off", { tag: "@sweep" }, async ({
  tapeline,
}) => {
  const { desk, app, folder } = tapeline;
  await callDoor(desk, "language.choose", { language: "es" });
  await speaks(desk, "es");
  await callDoor(desk, "day.openDemo");
  // A page that has not heard of the day yet leads back to the start.
  await desk.reload();
  await goTo(desk, "/instructions", "Hojas de instrucciones");
  for (const paper of ["A4", "Carta (EE. UU.)"]) {
    await desk.getByRole("radio", { name: paper }).press("Space");
    await expect(desk.locator("article")).toHaveCount(6);
    expect(await endOfSheets(desk)).toEqual(Array(6).fill(true));
  }
  const file = join(folder, "hojas.pdf");
  await app.evaluate(({ dialog }, filePath) => {
    dialog.showSaveDialog = () => Promise.resolve({ canceled: false, filePath });
  }, file);
  const outcome = await desk.evaluate(() =>
    (window as unknown as { bridge: Bridge }).bridge.savePdf({
      path: "/print/instructions/all",
      paper: "a4",
      suggestedName: "x.pdf",
    }),
  );
  expect(outcome).toEqual({ saved: true, name: "hojas.pdf" });
  const pages = await readPdf(file);
  expect(pages).toHaveLength(6);
  expect(pages[0]?.text).toContain("Flexiones con cadencia");
  expect(pages[0]?.text).toContain(
    "El metrónomo da 40 golpes por minuto; una repetición dura 2 golpes, 3 s.",
  );
  expect(pages[5]?.text).toContain(
    "Nadie se clasifica por su resultado: se muestra la mejora sobre tu propia mejor marca.",
  );
});

/** Of each sheet, whether all that stands on it ends inside it. */
function endOfSheets(desk: Page): Promise<boolean[]> {
  return desk.locator("article").evaluateAll((articles) =>
    articles.map((article) => {
      const parts = [...article.querySelectorAll("*")].map((part) => part.getBoundingClientRect().bottom);
      return Math.max(...parts) <= article.getBoundingClientRect().bottom + 1;
    }),
  );
}
