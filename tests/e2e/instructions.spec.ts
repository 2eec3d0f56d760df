import { readdir } from "node:fs/promises";
import { join } from "node:path";
import { type ElectronApplication, expect, type Page } from "@playwright/test";
import type { Bridge } from "../../electron/shell/bridge/bridge-types.ts";
import { test as alone } from "./fixture.ts";
import { callDoor } from "./page.ts";
import { type PdfPage, readPdf } from "./pdf.ts";
import type { Tapeline } from "./session.ts";
import { openSharedDay, test } from "./shared.ts";

/** Points (1/72 in) of the papers. Source: ISO 216, 210 × 297 mm; ANSI/ASME Y14.1, 8.5 × 11 in; whole points. */
const papers = { a4: { width: 595, height: 842 }, letter: { width: 612, height: 792 } } as const;
type Paper = keyof typeof papers;

/** A title and one sentence of each sheet that nothing but that sheet says, with the handbook's numbers. */
const sheets = {
  "push-up": ["Cadence push-up", "The metronome beats 40 a minute; a rep takes 2 beats, 3 s."],
  agility: ["Quadrant jump", "3 ft (0.914 m)"],
  vertical: ["Vertical leap", "You have 3 trials"],
  core: ["Staged plank", "At 4:00 the stages begin again"],
  endurance: ["Circuit", "Do 3 rounds in the order of the drawing"],
  athlete: ["Your five tests", "20 skater strides, 20 lunge jumps, 40 high knees, 10 squat thrusts"],
} as const;
const names = Object.keys(sheets) as (keyof typeof sheets)[];

/** The worked examples of PROTOCOLS (push-up, agility), and of hand timing rounded up to the tenth. */
const examples = {
  "push-up": "23 − 3 = 20",
  agility: "(30 + 29) / 2 = 29.5",
  vertical: "262.5 − 219 = 43.5 cm",
  core: "3:29, arm and opposite leg",
  endurance: "4:12.34: rounded up to the tenth, the result is 4:12.4",
} as const;

const caution =
  "Stop the test at once if there is pain, chest pressure, dizziness, nausea, palpitations, or breathlessness out of proportion to the work.";

test("each sheet is one page of either paper, with words that can be selected", async ({ tapeline }) => {
  await openSharedDay(tapeline.desk);
  for (const paper of ["a4", "letter"] as const) {
    for (const name of names) {
      const pages = await pdf(tapeline, name, paper);
      const sizes = pages.map(({ width, height }) => ({ width, height }));
      expect(sizes, `${name} on ${paper}`).toEqual([papers[paper]]);
      const text = textOf(pages);
      for (const words of [...sheets[name], caution, "Autumn testing day", "Run by the standard rules"]) {
        expect(text, `${name} on ${paper}`).toContain(words);
      }
      if (name !== "athlete") expect(text).toContain(examples[name]);
    }
    const all = await pdf(tapeline, "all", paper);
    expect(all.map(({ width, height }) => ({ width, height }))).toEqual(names.map(() => papers[paper]));
    for (const [index, name] of names.entries()) expect(all[index]?.text).toContain(sheets[name][0]);
  }
  expect((await readdir(tapeline.folder)).filter((file) => file.endsWith(".part"))).toEqual([]);
  expect((await tapeline.blocked()).count).toBe(0);
});

test("nothing of a sheet is cut off by the end of its page", async ({ tapeline: { desk } }) => {
  await openSharedDay(desk);
  for (const paper of ["A4", "US Letter"]) {
    await goTo(desk, "/instructions");
    await desk.getByRole("radio", { name: paper }).press("Space");
    await expect(desk.locator("article")).toHaveCount(6);
    expect(await lowestInside(desk)).toEqual(names.map((name) => [name, true]));
  }
});

alone(
  "the sheets show the settings of the day, and that they are not the handbook's",
  async ({ tapeline }) => {
    await openDay(tapeline.desk, {
      "push-up": { bpm: 50, beatsPerRep: 2, missesToStop: 2 },
      agility: { crossSize: 1000, seconds: 12, touchPenalty: 1 },
      vertical: { trials: 4 },
      endurance: {
        rounds: 2,
        exercises: [
          { exercise: "skater-strides", count: 24, sides: 2 },
          { exercise: "lunge-jumps", count: 16, sides: 2 },
          { exercise: "high-knees", count: 44, sides: 2 },
          { exercise: "squat-thrusts", count: 13, sides: 1 },
        ],
      },
    });
    const all = await pdf(tapeline, "all", "letter");
    const text = (index: number) => textOf(all.slice(index, index + 1));
    for (const words of ["beats 50 a minute", "2.4 s", "At 2 missed in a row", "22 − 2 = 20"]) {
      expect(text(0)).toContain(words);
    }
    // 4 × 7 + 3 − 2 × 1 = 29; (29 + 29) / 2 = 29.
    for (const words of ["3.3 ft (1 m)", "for 12 s", "4 × 7 + 3 − 2 × 1 = 29", "(29 + 29) / 2 = 29"]) {
      expect(text(1)).toContain(words);
    }
    expect(text(2)).toContain("You have 4 trials");
    for (const words of ["Do 2 rounds", "24", "12 each side", "8 each side", "44", "22 each side", "13"]) {
      expect(text(4)).toContain(words);
    }
    expect(text(5)).toContain("2 rounds against the clock: 24 skater strides, 16 lunge jumps, 44 high knees");
    for (const index of [0, 1, 2, 4]) expect(text(index)).toContain("Run with this day's own settings");
    expect(text(3)).toContain("Run by the standard rules");
  },
);

test("from a station to its paper, to the printer and to a file, by the keyboard", async ({ tapeline }) => {
  const { desk, app, folder } = tapeline;
  await openSharedDay(desk);
  await goTo(desk, "/station/core");
  await expect(desk.getByRole("button", { name: /^The rules/ })).toBeVisible();
  await desk.keyboard.press("Alt+R");
  await desk.getByRole("link", { name: "Print the instructions" }).press("Enter");
  await expect(desk.getByRole("heading", { level: 1, name: "Instruction sheets" })).toBeVisible();
  await expect(desk.locator("article h1")).toHaveText("Staged plank");
  await desk.getByRole("radio", { name: "US Letter" }).press("Space");

  await answerPrint(app, true, "");
  await desk.getByRole("button", { name: "Print" }).press("Enter");
  await expect(desk.getByText("Sent to the printer.")).toBeVisible();
  const printed = await app.evaluate(() => Reflect.get(globalThis, "printed"));
  expect(printed).toEqual({
    url: "app://desk/#/print/instructions/core/letter",
    options: { printBackground: true, pageSize: "Letter", margins: { marginType: "none" } },
    title: "Station 4: Staged plank, Autumn testing day",
    visible: false,
    preload: false,
  });
  await answerPrint(app, false, "Print job canceled");
  await desk.getByRole("button", { name: "Print" }).press("Enter");
  await expect(desk.getByText("Not printed.")).toBeVisible();
  await answerPrint(app, false, "Print job failed");
  await desk.getByRole("button", { name: "Print" }).press("Enter");
  await expect(desk.getByText("This could not be printed.")).toBeVisible();

  await answerSave(app, join(folder, "plank.pdf"));
  await desk.getByRole("button", { name: "Save as PDF" }).press("Enter");
  await expect(desk.getByText("Saved as plank.pdf.")).toBeVisible();
  expect(await app.evaluate(() => Reflect.get(globalThis, "askedFor"))).toBe(
    "Instructions 4 Staged plank 2026-11-14 US Letter.pdf",
  );
  expect(textOf(await readPdf(join(folder, "plank.pdf")))).toContain("Staged plank");
  // No window out of sight is left behind.
  expect(await app.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows().length)).toBe(1);
});

test("a larger screen letter changes nothing on paper", async ({ tapeline }) => {
  await openSharedDay(tapeline.desk);
  await zoom(tapeline.app, 4);
  const pages = await pdf(tapeline, "agility", "letter");
  expect(pages).toHaveLength(1);
  expect(textOf(pages)).toContain(caution);
  await zoom(tapeline.app, 0);
});

test("the shell lays out print pages and nothing else", async ({ tapeline }) => {
  await openSharedDay(tapeline.desk);
  await answerSave(tapeline.app, join(tapeline.folder, "never.pdf"));
  for (const path of [
    "/day",
    "/print",
    "/print/../day",
    "/print/a?b",
    "//x/print/a",
    "https://x",
    "/print/a#b",
  ]) {
    const outcome = await tapeline.desk.evaluate((asked) => {
      const { bridge } = window as unknown as { bridge: Bridge };
      const told = (work: Promise<unknown>) =>
        work.then(
          () => "done",
          () => "refused",
        );
      return Promise.all([
        told(bridge.savePdf({ path: asked, paper: "a4", suggestedName: "x.pdf" })),
        told(bridge.print({ path: asked, paper: "a4" })),
      ]);
    }, path);
    expect.soft(outcome, path).toEqual(["refused", "refused"]);
  }
  expect(await readdir(tapeline.folder)).not.toContain("never.pdf");
});

function zoom(app: ElectronApplication, level: number): Promise<void> {
  return app.evaluate(
    ({ BrowserWindow }, asked) => BrowserWindow.getAllWindows()[0]?.webContents.setZoomLevel(asked),
    level,
  );
}

/** A day that is open, with parameters of its own. */
async function openDay(desk: Page, parameters: Record<string, unknown>): Promise<void> {
  await callDoor(desk, "day.create", {
    sure: true,
    date: "2026-11-14",
    title: "Autumn testing day",
    parameters,
  });
  await callDoor(desk, "day.open", { sure: true });
}

async function goTo(desk: Page, path: string): Promise<void> {
  await desk.evaluate((hash) => {
    location.hash = hash;
  }, path);
}

/** Saves a sheet through the bridge as the screen does, and reads the file. */
async function pdf(tapeline: Tapeline, which: string, paper: Paper): Promise<readonly PdfPage[]> {
  const file = join(tapeline.folder, `${which}-${paper}.pdf`);
  await answerSave(tapeline.app, file);
  const outcome = await tapeline.desk.evaluate(
    ([path, size]) =>
      (window as unknown as { bridge: Bridge }).bridge.savePdf({ path, paper: size, suggestedName: "x.pdf" }),
    [`/print/instructions/${which}`, paper] as const,
  );
  expect(outcome).toEqual({ saved: true, name: `${which}-${paper}.pdf` });
  return readPdf(file);
}

function textOf(pages: readonly PdfPage[]): string {
  return pages.map(({ text }) => text).join(" ");
}

/** Whether the foot of each page, the last thing on it, ends inside the page. */
function lowestInside(desk: Page): Promise<(string | boolean | undefined)[][]> {
  return desk.locator("article").evaluateAll((articles) =>
    articles.map((article) => {
      const lowest = Math.max(
        ...[...article.querySelectorAll("*")].map((part) => part.getBoundingClientRect().bottom),
      );
      return [(article as HTMLElement).dataset.test, lowest <= article.getBoundingClientRect().bottom];
    }),
  );
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

/** Stands for the person at the system's print dialog, and keeps what the dialog was opened for. */
async function answerPrint(app: ElectronApplication, printed: boolean, reason: string): Promise<void> {
  await app.evaluate(
    ({ app: main, BrowserWindow }, [success, why]) => {
      main.once("browser-window-created", (_event, window) => {
        const contents = window.webContents;
        contents.print = (options, answered) => {
          void contents.executeJavaScript("[document.title, 'bridge' in window]").then(([title, preload]) => {
            const shown = BrowserWindow.fromWebContents(contents)?.isVisible();
            Object.assign(globalThis, {
              printed: { url: contents.getURL(), options, title, visible: shown, preload },
            });
            answered?.(success, why);
          });
        };
      });
    },
    [printed, reason] as const,
  );
}
