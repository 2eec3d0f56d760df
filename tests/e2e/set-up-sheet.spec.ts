import { join } from "node:path";
import { expect, type Page } from "@playwright/test";
import { test } from "./fixture.ts";
import { openDemoTable } from "./joining.ts";
import { callDoor } from "./page.ts";
import { type PdfPage, readPdf } from "./pdf.ts";
import type { Tapeline } from "./session.ts";
import { answerSaveDialog } from "./sheets.ts";

/** Points (1/72 in) of the papers. Source: ISO 216, 210 × 297 mm; ANSI/ASME Y14.1, 8.5 × 11 in; whole points. */
const papers = { A4: { width: 595, height: 842 }, "US Letter": { width: 612, height: 792 } } as const;

/** Saves the sheet as people do, and reads what came. */
async function save(tapeline: Tapeline, paper: RegExp, button: string): Promise<PdfPage> {
  const { desk, folder } = tapeline;
  // A name of its own, so that it is seen when this one is saved.
  const name = `${button}-${paper.source.slice(1, 3)}.pdf`;
  const file = join(folder, name);
  await answerSaveDialog(tapeline, file);
  await desk.getByRole("radio", { name: paper }).press("Space");
  await desk.getByRole("button", { name: button }).click();
  await expect(desk.getByText(name)).toBeVisible();
  const [page, ...more] = await readPdf(file);
  expect(more).toEqual([]);
  if (page === undefined) throw new Error("The PDF has no page.");
  return page;
}

/** How far the page's last line ends above its lower edge, in mm. */
function roomBelow(desk: Page): Promise<number> {
  return desk.evaluate(() => {
    const sheet = document.querySelector(".print-sheet");
    const foot = sheet?.querySelector("footer");
    if (sheet == null || foot == null) return Number.NaN;
    const mm = sheet.getBoundingClientRect().width / 210;
    return (sheet.getBoundingClientRect().bottom - foot.getBoundingClientRect().bottom) / mm;
  });
}

test("the set-up sheet is one page with the hall's own address and key, in either language", async ({
  tapeline,
}) => {
  const { desk } = tapeline;
  const url = await openDemoTable(tapeline);
  const key =
    (await desk
      .getByText(/^This laptop's key/)
      .locator("xpath=following-sibling::dd")
      .first()
      .textContent()) ?? "";
  expect(key).toMatch(/^[0-9A-F ]{20,}$/i);
  const a4 = await save(tapeline, /^A4/, "Save the sheet as PDF");
  expect({ width: a4.width, height: a4.height }).toEqual(papers.A4);
  for (const words of [url, key, "Send away", "Joined", "Demo day"]) expect(a4.text).toContain(words);
  const letter = await save(tapeline, /^US Letter/, "Save the sheet as PDF");
  expect({ width: letter.width, height: letter.height }).toEqual(papers["US Letter"]);
  expect(letter.text).toContain("Print again then.");
  await callDoor(desk, "language.choose", { language: "es" });
  await expect(desk.getByRole("button", { name: "Guardar la hoja como PDF" })).toBeVisible();
  const spanish = await save(tapeline, /^A4/, "Guardar la hoja como PDF");
  for (const words of [url, key, "Retirar", "Entonces, imprime otra vez."]) {
    expect(spanish.text).toContain(words);
  }
});

test("with the switch off the sheet has lines to write on, and nothing of it is cut off", async ({
  tapeline: { desk },
}) => {
  await callDoor(desk, "day.openDemo");
  for (const language of ["en", "es"]) {
    await callDoor(desk, "language.choose", { language });
    for (const paper of ["a4", "letter"]) {
      await desk.evaluate((path) => {
        location.hash = path;
      }, `/print/set-up/${paper}`);
      await desk.reload();
      await desk.locator(".print-sheet h1").waitFor();
      await expect(desk.locator('dd[data-line="true"]')).toHaveCount(3);
      expect(await roomBelow(desk), `${language} ${paper}`).toBeGreaterThan(4);
    }
  }
});
