import { readdir, readFile } from "node:fs/promises";
import { join } from "node:path";
import { expect } from "@playwright/test";
import { strFromU8, unzipSync } from "fflate";
import type { ReportFile } from "../../electron/shell/bridge/bridge-types.ts";
import { expectForEverybody } from "./axe.ts";
import { test } from "./fixture.ts";
import { callDoor } from "./page.ts";
import type { Tapeline } from "./session.ts";
import { answerOpenDialog, answerSaveDialog } from "./sheets.ts";

/** Nobody is called this by chance; in pieces, because a log might break a name up. */
const canary = { first: "Zanziquill", last: "Ovenbird", league: "Quoxham Lanterns", number: "7319" };
const pieces = [canary.first, canary.last, "Quoxham", canary.number];

test("a whole day with every kind of fault in it leaves no name and no mark in the log or the report", async ({
  tapeline,
}) => {
  const { folder } = tapeline;
  await holdDay(tapeline);
  await failEverywhere(tapeline);
  await expect.poll(() => logOf(folder)).toContain("page-error host=desk place=/athletes/* error=TypeError");
  await expect.poll(() => logOf(folder)).toContain("page-gone host=desk place=/athletes/* reason=");
  const log = await logOf(folder);
  expect(log).toMatch(/ fault where=main error=RangeError at=\S+/);
  expect(log).toMatch(/ fault where=promise error=Error code=ENOSPC call=write/);
  expect(log).toMatch(/ fault where=console error=Error code=ENOENT call=open at=\S*main\.js:\d+:\d+/);
  // The page comes back by itself, where it was.
  await expect
    .poll(() => inPage(tapeline, "[location.hash, document.documentElement.dataset.ready]"))
    .toEqual(["#/athletes/1", "true"]);
  const report = (await inPage(tapeline, "window.bridge.report()")) as ReportFile[];
  const told = [log, ...report.map(({ text }) => text)].join("\n").toLowerCase();
  for (const piece of pieces) expect(told).not.toContain(piece.toLowerCase());
  expect(told).not.toContain(folder.toLowerCase());
  // The search finds what is there: the store has it all.
  const stored = await bytesIn(folder, /sqlite/);
  for (const piece of pieces) expect(stored).toContain(piece);
});

test("the report can be read first, and the file holds what was read, to the letter", async ({
  tapeline,
}) => {
  const { desk, folder } = tapeline;
  await desk.getByRole("link", { name: "Save a report for whoever helps you" }).click();
  await expect(desk.getByRole("heading", { name: "A report for help" })).toBeVisible();
  await expect(desk.getByRole("main")).toContainText("Nothing is sent anywhere.");
  const names = ["about.json", "store.json", "tapeline.log"];
  const shown: string[] = [];
  for (const name of names) {
    const file = desk.getByRole("listitem").filter({ hasText: name });
    await file.locator("summary").click();
    await expect(file.locator("pre")).toBeVisible();
    shown.push((await file.locator("pre").textContent()) ?? "");
  }
  await expectForEverybody(desk);
  await answerSaveDialog(tapeline, "");
  await desk.getByRole("button", { name: "Save the report" }).click();
  await expect(desk.getByRole("status")).toContainText("Nothing was saved.");
  await answerSaveDialog(tapeline, join(folder, "report.zip"));
  await desk.getByRole("button", { name: "Save the report" }).click();
  await expect(desk.getByRole("status")).toContainText("Saved as report.zip.");
  const saved = unzipSync(new Uint8Array(await readFile(join(folder, "report.zip"))));
  expect(Object.keys(saved)).toEqual(names);
  for (const [index, name] of names.entries()) {
    expect(strFromU8(saved[name] ?? new Uint8Array())).toBe(shown[index]);
  }
  expect(JSON.parse(shown[0] ?? "")).toMatchObject({ program: { packaged: false, requestsBlocked: 0 } });
  expect(JSON.parse(shown[1] ?? "")).toMatchObject({ inUse: "own", check: "ok", marksFollow: true });
  expect(await tapeline.blocked()).toMatchObject({ count: 0 });
});

/** Somebody is checked in, tested and looked at. */
async function holdDay({ desk }: Tapeline): Promise<void> {
  await callDoor(desk, "day.create", { sure: true, date: "2031-05-04", title: `Day of ${canary.first}` });
  await callDoor(desk, "day.open", { sure: true });
  const outcome = { bib: null, leaveOut: [], board: "name", share: true, guardianConsent: false, by: "QA" };
  const who = { league: canary.league, name: `${canary.first} ${canary.last}`, number: canary.number };
  await callDoor(desk, "checkIn.walkUp", { ...who, birthYear: 1990, ...outcome });
  const attempts = [{ id: crypto.randomUUID(), seen: { how: "tally", reps: 33, offAtEnd: 0 } }];
  const entry = { athleteId: 1, test: "push-up", variant: "full", attempts, by: "QA", sure: true };
  await callDoor(desk, "station.enter", entry);
  await desk.evaluate(() => {
    location.hash = "/athletes/1";
  });
  await expect(desk.getByRole("heading", { name: `${canary.first} ${canary.last}` })).toBeVisible();
}

/** Faults of the main process, of a page and of a file, each with the canary in its message; then the page crashes. */
async function failEverywhere(tapeline: Tapeline): Promise<void> {
  const { app, desk, folder } = tapeline;
  const name = `${canary.first} ${canary.last} of ${canary.league}`;
  await app.evaluate((_electron, who) => {
    setTimeout(() => {
      throw new RangeError(`${who} has no mark\n    at ${who} (${who}.js:1:1)`);
    });
    void Promise.reject(Object.assign(new Error(who), { code: "ENOSPC", syscall: "write", path: `/${who}` }));
  }, name);
  await answerOpenDialog(tapeline, join(folder, `${name}.csv`));
  await tapeline.bridge((bridge) => bridge.openSheet());
  await desk.evaluate((who) => {
    setTimeout(() => {
      throw new TypeError(`${who} has no number ${who.length}`);
    });
    console.error(`Uncaught ${who}`, { who });
  }, name);
  await expect.poll(() => logOf(folder)).toContain("error=TypeError");
  await app.evaluate(({ BrowserWindow }) => {
    for (const { webContents } of BrowserWindow.getAllWindows()) webContents.forcefullyCrashRenderer();
  });
}

/** What an expression is in the desk's page; the runner itself gives up a page that once crashed. */
function inPage({ app }: Tapeline, expression: string): Promise<unknown> {
  return app.evaluate(({ BrowserWindow }, text) => {
    const [window] = BrowserWindow.getAllWindows();
    return window?.webContents.isCrashed() === false ? window.webContents.executeJavaScript(text) : null;
  }, expression);
}

/** All that is in the log's files. */
async function logOf(folder: string): Promise<string> {
  return bytesIn(join(folder, "logs"), /\.log$/);
}

async function bytesIn(folder: string, name: RegExp): Promise<string> {
  const files = (await readdir(folder)).filter((file) => name.test(file));
  return (await Promise.all(files.map((file) => readFile(join(folder, file), "utf8")))).join("\n");
}
