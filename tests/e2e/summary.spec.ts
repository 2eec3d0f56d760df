import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { type ElectronApplication, expect, type Page } from "@playwright/test";
import { unzipSync } from "fflate";
import Papa from "papaparse";
import type { Bridge } from "../../electron/shell/bridge/bridge-types.ts";
import { expectForEverybody } from "./axe.ts";
import { showOn, textsOutOfCells } from "./in-sight.ts";
import { callDoor } from "./page.ts";
import { readPdf } from "./pdf.ts";
import type { Tapeline } from "./session.ts";
import { test } from "./shared.ts";

const title = "Autumn testing day";

/** Two leagues; one athlete with a first mark and a correction, one who leaves a test out, one who has done nothing. */
async function smallDay(desk: Page): Promise<void> {
  await callDoor(desk, "day.create", { sure: true, date: "2026-11-14", title });
  await callDoor(desk, "day.open", { sure: true });
  const people = [
    { league: "Gravel Moon", name: "Anvil Sparrow", leaveOut: [] },
    { league: "Gravel Moon", name: "Brine Kestrel", leaveOut: ["vertical"] },
    { league: "North Quay", name: '=Cinder, "Plover"', leaveOut: [] },
  ];
  const ids: number[] = [];
  for (const [index, who] of people.entries()) {
    const answers = { board: "bib", share: false, guardianConsent: false, by: "CH", birthYear: 1990 };
    const number = String(index + 7);
    const admitted = await callDoor(desk, "checkIn.walkUp", { ...who, ...answers, number, bib: index + 1 });
    ids.push((admitted as { athleteId: number }).athleteId);
  }
  const [athleteId] = ids;
  const entry = { athleteId, test: "push-up", variant: "full", by: "QA", sure: true };
  const attempt = (reps: number) => [{ id: crypto.randomUUID(), seen: { how: "tally", reps, offAtEnd: 0 } }];
  const attempts = attempt(20);
  await callDoor(desk, "station.enter", { ...entry, attempts });
  const replaces = { attemptId: attempts[0]?.id, reason: "Miscounted" };
  await callDoor(desk, "station.enter", { ...entry, attempts: attempt(21), replaces });
}

test("from the overview to one league's summary, to a file of sheets and to paper", async ({ tapeline }) => {
  const { desk, app, folder } = tapeline;
  await smallDay(desk);
  await desk.evaluate(() => {
    location.hash = "/day";
  });
  await desk.getByRole("link", { name: "Day summary" }).click();
  await expect(desk.getByRole("heading", { level: 1, name: "Day summary" })).toBeVisible();
  const who = desk.getByRole("region", { name: "Who did what" }).last();
  await expect(who.getByRole("row")).toHaveCount(4);
  await expect(who.getByRole("row", { name: /Anvil Sparrow/ })).toContainText("21");
  await expect(
    desk.getByRole("row", { name: /Brine Kestrel/ }).filter({ hasText: "as decided at check-in" }),
  ).toBeVisible();
  const corrections = desk.getByRole("region", { name: "Corrections" }).last();
  await expect(corrections.getByRole("row").nth(1)).toContainText("Miscounted");
  await expectForEverybody(desk);

  await desk.getByRole("combobox", { name: "For" }).selectOption({ label: "North Quay (1)" });
  await expect(desk.getByText("They hold only North Quay")).toBeVisible();
  await expect(who.getByRole("row")).toHaveCount(2);
  await expect(desk.getByText("Anvil Sparrow")).toHaveCount(0);

  await answerSave(app, join(folder, "all.zip"));
  await desk.getByRole("button", { name: "Save all as one file" }).click();
  await expect(desk.getByText("Saved as all.zip. It contains names")).toBeVisible();
  expect(await app.evaluate(() => Reflect.get(globalThis, "askedFor"))).toBe(
    "tapeline-summary-2026-11-14-north-quay.zip",
  );
  const files = unzipSync(await readFile(join(folder, "all.zip")));
  expect(Object.keys(files)).toContain("data-dictionary.md");
  const sheet = Buffer.from(files["athletes.csv"] ?? []).toString();
  const { data } = Papa.parse<Record<string, string>>(sheet, { header: true, skipEmptyLines: true });
  expect(data.map(({ name }) => name)).toEqual(['\'=Cinder, "Plover"']);

  await answerSave(app, join(folder, "one.csv"));
  await desk.getByRole("button", { name: "Save athletes.csv" }).click();
  await expect(desk.getByText("Saved as one.csv.")).toBeVisible();
  expect(await readFile(join(folder, "one.csv"), "utf8")).toBe(sheet);

  await answerSave(app, join(folder, "league.pdf"));
  await desk.getByRole("button", { name: "Save as PDF" }).click();
  await expect(desk.getByText("Saved as league.pdf.")).toBeVisible();
  const pages = await readPdf(join(folder, "league.pdf"));
  const text = pages.map((page) => page.text).join(" ");
  for (const words of ["North Quay", title, "Who did what", "Contains names", `Page 1 of ${pages.length}`]) {
    expect(text).toContain(words);
  }
  expect(text).not.toContain("Anvil Sparrow");
});

test("a closed day is summed up on paper: every athlete once, no page too full", async ({ tapeline }) => {
  const { desk } = tapeline;
  await callDoor(desk, "day.openDemo");
  await callDoor(desk, "day.close", { dayId: 1 });
  await desk.reload();
  await desk.getByRole("link", { name: "Summary of the day" }).click();
  await expect(desk.getByRole("heading", { level: 1, name: "Day summary" })).toBeVisible();
  await expect(desk.getByText("The day is still going")).toHaveCount(0);
  const names = await desk.evaluate(() =>
    fetch(`/trpc/summary.get?input=${encodeURIComponent("{}")}`)
      .then((response) => response.json())
      .then(
        ({ result }) => result.data.rows.map(({ who }: { who: { name: string } }) => who.name) as string[],
      ),
  );
  expect(names).toHaveLength(60);
  const changes = desk.getByRole("region", { name: "How each league changed" }).last();
  await expect(changes.getByRole("row", { name: /Kiln Hollow.*Agility/ })).toContainText("+1.8 landings");
  await expect(changes.getByRole("row", { name: /Kiln Hollow.*knees/ })).toContainText("It takes 8");
  // A machine without a typeface for a script draws boxes, which nobody can select.
  const latin = names.filter((name) => /^[\p{Script=Latin}\p{M}\p{N}\p{P}\p{S}\s]+$/u.test(name));
  expect(latin.length).toBeGreaterThan(50);
  for (const paper of ["a4", "letter"] as const) {
    const pages = await pdf(tapeline, paper);
    const sizes = new Set(pages.map(({ width, height }) => `${width} x ${height}`));
    // Points: ISO 216, 210 x 297 mm; ANSI/ASME Y14.1, 8.5 x 11 in.
    expect([...sizes]).toEqual([paper === "a4" ? "595 x 842" : "612 x 792"]);
    const text = pages.map((page) => page.text).join(" ");
    for (const name of latin) expect(text).toContain(name);
    // The foot stands on every page, so nothing above it has run over.
    for (const [index, page] of pages.entries()) {
      expect(page.text).toContain(`Page ${index + 1} of ${pages.length}`);
    }
    expect(pages.at(-1)?.text).toContain("Typical errors");
    expect(text).toContain("How each league changed");
    expect(text).toContain("+1.8 landings");
  }
});

test("no cell of a summary is cut at 1280 x 800 or on paper, in English and Spanish", async ({
  tapeline,
}) => {
  const { desk } = tapeline;
  await callDoor(desk, "day.openDemo");
  await desk.reload();
  await showOn(desk, { width: 1280, height: 800, scale: 1 });
  for (const language of ["en", "es"]) {
    // A page for paper hears of nothing.
    await desk.evaluate(() => {
      location.hash = "/day";
    });
    await callDoor(desk, "language.choose", { language });
    await expect(desk.locator("html")).toHaveAttribute("lang", language);
    for (const [path, shown] of [
      ["/summary", "main h1"],
      ["/summary/1/1", "main h1"],
      ["/print/summary/1/all/a4", "main article"],
      ["/print/summary/1/all/letter", "main article"],
      ["/print/summary/1/1/a4", "main article"],
    ] as const) {
      await desk.evaluate((to) => {
        location.hash = to;
      }, path);
      await expect(desk.locator(shown).first()).toBeVisible();
      await expect(desk.locator('[aria-busy="true"]')).toHaveCount(0);
      await expect(desk.locator("main td").first()).toBeVisible();
      expect.soft(await textsOutOfCells(desk), `${language} ${path}`).toEqual([]);
    }
  }
});

async function pdf(tapeline: Tapeline, paper: "a4" | "letter") {
  const file = join(tapeline.folder, `summary-${paper}.pdf`);
  await answerSave(tapeline.app, file);
  const outcome = await tapeline.desk.evaluate((size) => {
    const { bridge } = window as unknown as { bridge: Bridge };
    return bridge.savePdf({ path: "/print/summary/1/all", paper: size, suggestedName: "x.pdf" });
  }, paper);
  expect(outcome.saved).toBe(true);
  return readPdf(file);
}

/** Answers the next questions where to save with a path. */
async function answerSave(app: ElectronApplication, filePath: string): Promise<void> {
  await app.evaluate(({ dialog }, path) => {
    Object.assign(dialog, {
      showSaveDialog: async (_window: unknown, options: { defaultPath?: string }) => {
        Object.assign(globalThis, { askedFor: options.defaultPath });
        return { canceled: false, filePath: path };
      },
    });
  }, filePath);
}
