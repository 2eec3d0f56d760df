import { readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { expect, type Page } from "@playwright/test";
import { BinaryBitmap, Code128Reader, HybridBinarizer, RGBLuminanceSource } from "@zxing/library";
import { getDocument, type PDFDocumentProxy } from "pdfjs-dist/legacy/build/pdf.mjs";
import type { Bridge } from "../../electron/shell/bridge/bridge-types.ts";
import { boardDay } from "../door/board-day.ts";
import { crowd } from "../door/crowd.ts";
import { expectForEverybody } from "./axe.ts";
import { answerSave } from "./cards-day.ts";
import { test } from "./fixture.ts";
import { callDoor } from "./page.ts";
import { type PdfPage, readPdf } from "./pdf.ts";
import type { Tapeline } from "./session.ts";
import { takeSheet } from "./sheets.ts";

/** A day on which so many invented people have checked in, bibs from 1. */
async function openDayOf(tapeline: Tapeline, count: number): Promise<void> {
  await tapeline.restart(async () => {
    const day = await boardDay(crowd(count), join(tapeline.folder, "tapeline.sqlite"));
    day.desk.close();
  });
}

async function goTo(desk: Page, path: string): Promise<void> {
  await desk.evaluate((hash) => {
    location.hash = hash;
  }, path);
}

/** Saves papers through the bridge as the screen does; returns the file. */
async function save(tapeline: Tapeline, path: string, paper: "a4" | "letter"): Promise<string> {
  const file = join(tapeline.folder, "papers.pdf");
  await answerSave(tapeline.app, file);
  const outcome = await tapeline.desk.evaluate(
    ([page, size]) => {
      const { bridge } = window as unknown as { bridge: Bridge };
      return bridge.savePdf({ path: page, paper: size as "a4", suggestedName: "papers.pdf" });
    },
    [`/print/papers/${path}`, paper] as const,
  );
  expect(outcome).toMatchObject({ saved: true });
  return file;
}

const titles = ["Cadence push-up", "Quadrant jump", "Vertical leap", "Staged plank", "Circuit"];
const fields = {
  "push-up": ["Top beats in total", "Missed reps at the end", "Full", "On the knees"],
  agility: ["Clockwise", "Counter-clockwise", "Full laps", "Extra quadrants (0–", "Line touches"],
  vertical: ["Standing reach (cm)", "Touch 1 (cm)", "Touch 2 (cm)", "Touch 3 (cm)"],
  core: ["Time (m:ss)"],
  endurance: ["Finished", "Time (m:ss)", "Not finished", "Full rounds done", "Reps in the unfinished round"],
} as const;
const caution = "Stop the test at once if there is pain";

function bibsIn(pages: readonly PdfPage[], count: number): number[] {
  const words = new Set(pages.flatMap(({ text }) => text.split(" ")));
  return Array.from({ length: count }, (_none, index) => index + 1).filter((bib) => words.has(String(bib)));
}

test("record sheets of 41 are three pages a station, each with its head, its boxes and its number", async ({
  tapeline,
}) => {
  await openDayOf(tapeline, 41);
  for (const [paper, size] of [
    ["a4", { width: 595, height: 842 }],
    ["letter", { width: 612, height: 792 }],
  ] as const) {
    const pages = await readPdf(await save(tapeline, "records/here", paper));
    expect(pages.map(({ width, height }) => ({ width, height }))).toEqual(pages.map(() => size));
    expect(pages).toHaveLength(15);
    for (const [index, { text }] of pages.entries()) {
      const station = Math.floor(index / 3);
      const code = Object.keys(fields)[station] as keyof typeof fields;
      const wanted = [titles[station] ?? "", ...fields[code], caution, "Autumn testing day", "Here to test"];
      for (const words of [...wanted, `page ${(index % 3) + 1} of 3`, "Initials", "Time of day"])
        expect.soft(text, `page ${index + 1} on ${paper}`).toContain(words);
      // In the order in which they are entered.
      const places = fields[code].slice(0, 2).map((words) => text.indexOf(words));
      expect.soft(places).toEqual(places.toSorted((a, b) => a - b));
    }
    expect(bibsIn(pages.slice(0, 3), 41)).toHaveLength(41);
    const all = pages.map(({ text }) => text).join(" ");
    // Of 41 invented ones every tenth is hidden and every third by bib alone.
    expect(all).toContain("Ash Velvet");
    expect(all).not.toContain("Cinder Rue");
  }
});

test("a league, bibs from one number to another, and nobody at all have sheets with empty lines", async ({
  tapeline,
}) => {
  await openDayOf(tapeline, 20);
  const some = await readPdf(await save(tapeline, "core/bibs-3-7", "a4"));
  expect(some).toHaveLength(1);
  expect(some[0]?.text).toContain("Bibs 3 to 7");
  expect(bibsIn(some, 9).filter((bib) => bib > 3)).toEqual([4, 5, 6, 7]);
  const nobody = await readPdf(await save(tapeline, "core/expected", "a4"));
  expect(nobody[0]?.text).toContain("page 1 of 1");
});

test("nothing of a page is cut off, and what is chosen on the screen is what is saved", async ({
  tapeline,
}) => {
  await openDayOf(tapeline, 41);
  const { desk } = tapeline;
  await goTo(desk, "/day");
  await desk.getByRole("link", { name: "Record sheets, bibs and badges" }).click();
  await expect(desk.getByRole("heading", { level: 1, name: "Papers for the day" })).toBeVisible();
  for (const name of ["Record sheets, all five", "Record sheet 2: Quadrant jump", "Bib numbers", "Badges"]) {
    await desk.getByRole("link", { name, exact: true }).click();
    for (const paper of ["A4", "US Letter"]) {
      await desk.getByRole("radio", { name: paper }).press("Space");
      const cut = await desk
        .locator("article")
        .evaluateAll(
          (sheets) =>
            sheets.filter(
              (sheet) =>
                sheet.scrollHeight > sheet.clientHeight + 1 || sheet.scrollWidth > sheet.clientWidth + 1,
            ).length,
        );
      expect.soft(cut, `${name} on ${paper}`).toBe(0);
    }
    await desk.getByRole("radio", { name: "A4" }).press("Space");
    await desk.screenshot({ path: test.info().outputPath(`screen-${name.split(" ").at(-1)}.png`) });
    await desk
      .locator("article")
      .first()
      .screenshot({ path: test.info().outputPath(`paper-${name.split(" ").at(-1)}.png`) });
  }
  await expectForEverybody(desk);
  for (const [name, path] of [
    ["records", "records/here"],
    ["bibs", "bibs/bibs-98-101"],
    ["badges", "badges/all"],
  ] as const) {
    const file = await save(tapeline, path, "a4");
    await picture(
      file,
      test.info().outputPath(`pdf-${name}.png`),
      name === "records" ? [1, 4, 7, 10, 13] : [1],
    );
  }
  await desk.getByRole("link", { name: "Record sheet 4: Staged plank" }).click();
  await desk.getByLabel("Bib from").fill("9");
  await desk.getByLabel("to", { exact: true }).fill("3");
  await desk.getByRole("button", { name: "Use" }).click();
  await expect(desk.getByRole("alert")).toContainText("the smaller one first");
  await desk.getByLabel("to", { exact: true }).fill("12");
  await desk.getByLabel("to", { exact: true }).press("Enter");
  await expect(desk.getByRole("button", { name: "Print 1 page" })).toBeVisible();
  await answerSave(tapeline.app, join(tapeline.folder, "plank.pdf"));
  await desk.getByRole("button", { name: "Save as PDF" }).click();
  await expect(desk.getByText("Saved as plank.pdf.")).toBeVisible();
  const [page] = await readPdf(join(tapeline.folder, "plank.pdf"));
  expect(page?.text).toContain("Bibs 9 to 12");
});

test("from a station's rules to its record sheet", async ({ tapeline }) => {
  await openDayOf(tapeline, 3);
  const { desk } = tapeline;
  await goTo(desk, "/station/core");
  // A key before the station is there is nobody's.
  await expect(desk.locator('[data-whole-window] [data-test="core"]').first()).toBeVisible();
  await desk.keyboard.press("Alt+L");
  await expect(desk.getByRole("button", { name: /^The rules/ })).toBeVisible();
  await desk.getByRole("link", { name: "Print a record sheet" }).click();
  await expect(desk.locator("article h1")).toHaveText("Staged plank");
});

/** Pictures of pages of a PDF, to look at. */
async function picture(file: string, path: string, numbers: readonly number[]): Promise<void> {
  const loading = getDocument({ data: new Uint8Array(await readFile(file)), verbosity: 0 });
  const pdf = await loading.promise;
  for (const number of numbers) {
    const { canvas } = await drawn(pdf, number, 1.4);
    await writeFile(path.replace(".png", `-${number}.png`), canvas.toBuffer("image/png"));
  }
  await loading.destroy();
}

/** A page of a PDF as it looks, at so many times 72 dots an inch. */
async function drawn(pdf: PDFDocumentProxy, number: number, scale: number) {
  const page = await pdf.getPage(number);
  const viewport = page.getViewport({ scale });
  const factory = pdf.canvasFactory as {
    create(
      width: number,
      height: number,
    ): {
      canvas: { toBuffer(type: string): Buffer };
      context: CanvasRenderingContext2D;
    };
  };
  const { canvas, context } = factory.create(Math.ceil(viewport.width), Math.ceil(viewport.height));
  await page.render({ canvasContext: context, viewport, canvas: null }).promise;
  return { canvas, context, viewport };
}

/** The texts of the barcodes in parts of a PDF's pages, as an independent reader finds them in the picture. */
async function barcodesIn(file: string, across: number, down: number): Promise<string[][]> {
  const loading = getDocument({ data: new Uint8Array(await readFile(file)), verbosity: 0 });
  const pdf = await loading.promise;
  const found: string[][] = [];
  for (let number = 1; number <= pdf.numPages; number += 1) {
    // 216 dots an inch: less than any printer has.
    const { context, viewport } = await drawn(pdf, number, 3);
    const [width, height] = [Math.floor(viewport.width / across), Math.floor(viewport.height / down)];
    const parts = Array.from({ length: across * down }, (_none, index) =>
      context.getImageData((index % across) * width, Math.floor(index / across) * height, width, height),
    );
    found.push(parts.map(readBarcode));
  }
  await loading.destroy();
  return found;
}

/** The text of the first barcode in a picture, looked for from below; empty where there is none. */
function readBarcode({ data, width, height }: ImageData): string {
  const grey = new Uint8ClampedArray(width * height);
  for (let at = 0; at < grey.length; at += 1) grey[at] = data[at * 4] ?? 255;
  const strip = 30;
  for (let top = height - strip; top >= 0; top -= strip) {
    const part = grey.slice(top * width, (top + strip) * width);
    try {
      const bitmap = new BinaryBitmap(new HybridBinarizer(new RGBLuminanceSource(part, width, strip)));
      return new Code128Reader().decode(bitmap).getText();
    } catch {
      // No barcode in this strip.
    }
  }
  return "";
}

test("an independent reader reads every barcode of the printed bibs and badges", async ({ tapeline }) => {
  await openDayOf(tapeline, 12);
  const bibs = await barcodesIn(await save(tapeline, "bibs/bibs-1-24", "a4"), 1, 2);
  expect(bibs.flat()).toEqual(Array.from({ length: 24 }, (_none, index) => String(index + 1)));
  const badges = await barcodesIn(await save(tapeline, "badges/all", "a4"), 2, 4);
  expect(badges.flat().filter((text) => text !== "")).toEqual(
    Array.from({ length: 12 }, (_none, index) => String(index + 1)),
  );
});

test("a scanner that reads a badge opens its athlete at check-in, and after that their bib", async ({
  tapeline,
}) => {
  await tapeline.restart(async () => {
    const day = await boardDay([], join(tapeline.folder, "tapeline.sqlite"));
    day.desk.close();
  });
  const { desk } = tapeline;
  const roster =
    "league,name,number,screen\nFoundry Town,Ash Velvet,07,name\nFoundry Town,Briar Knox,7,bib\n";
  await takeSheet(desk, "roster", roster);
  const codes = await barcodesIn(await save(tapeline, "badges/expected", "a4"), 2, 4);
  const [ash = "", briar = ""] = codes[0] ?? [];
  expect([ash, briar]).toEqual([expect.stringMatching(/^TL\d+$/), expect.stringMatching(/^TL\d+$/)]);
  await goTo(desk, "/check-in");
  await expect(desk.getByRole("combobox")).toBeFocused();
  await scan(desk, briar);
  await expect(desk.getByRole("heading", { name: "Briar Knox" })).toBeVisible();
  await desk.keyboard.press("Escape");
  await goTo(desk, "/check-in");
  await expect(desk.getByRole("combobox")).toBeFocused();
  await scan(desk, ash);
  await expect(desk.getByRole("heading", { name: "Ash Velvet" })).toBeVisible();
  const answers = { bib: 5, leaveOut: [], board: "name", share: false, guardianConsent: false, by: "QA" };
  await callDoor(desk, "checkIn.admit", { athleteId: Number(ash.slice(2)), ...answers });
  const worn = await barcodesIn(await save(tapeline, "badges/here", "a4"), 2, 4);
  expect(worn[0]?.[0]).toBe("5");
  await goTo(desk, "/check-in");
  await scan(desk, "5");
  await expect(desk.getByRole("heading", { name: "Ash Velvet" })).toBeVisible();
  await expect(desk.getByText("Checked in", { exact: true })).toBeVisible();
});

/** Keys as fast as a scanner's, and Enter. */
async function scan(desk: Page, text: string): Promise<void> {
  await desk.keyboard.type(text);
  await desk.keyboard.press("Enter");
}
