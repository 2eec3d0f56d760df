import type { Page } from "@playwright/test";
import { readDoor } from "./app.ts";
import { desktop, picturePath, resize } from "./take.ts";

/** The pages for paper, as the shell lays them out: each at the size of its own sheets. */
export async function takePapers(desk: Page): Promise<void> {
  const current = await readDoor<{ day: { id: number } }>(desk, "day.current");
  const floor = await readDoor<{ who: { athleteId: number; name: string } }[]>(desk, "day.floor");
  const athlete = floor.find(({ who }) => who.name === "Chimney Comet")?.who.athleteId;
  if (athlete === undefined) throw new Error("Chimney Comet is not on the demonstration's floor.");
  const pages = [
    ["instructions", "/print/instructions/all/a4"],
    ["card", `/print/cards/${current.day.id}/athlete-${athlete}/a5`],
    ["card-letter-two", `/print/cards/${current.day.id}/athlete-${athlete}/letter-two`],
    ["record", "/print/papers/agility/here/a4"],
    ["bibs", "/print/papers/bibs/bibs-1-2/a4"],
    ["badges", "/print/papers/badges/here/a4"],
    ["held", `/print/held/${athlete}/a4`],
    ["set-up", "/print/set-up/a4"],
    ["summary", `/print/summary/${current.day.id}/all/a4`],
  ] as const;
  for (const [name, path] of pages) await takePaper(desk, name, path);
}

/** The pages of one address for paper. The window shows them until it goes elsewhere. */
export async function takePaper(desk: Page, name: string, path: string): Promise<void> {
  await desk.emulateMedia({ media: "print" });
  await resize(desk, path.endsWith("two") ? [1100, 816] : [840, 1123]);
  await desk.evaluate((hash) => {
    location.hash = hash;
  }, path);
  // A window of its own is new; this one begins anew.
  await desk.reload();
  await desk.waitForFunction(() => document.documentElement.dataset.ready === "true");
  await takeSheets(desk, name);
  await desk.emulateMedia({ media: "screen" });
  await resize(desk, desktop);
}

/** One picture a sheet of paper, the first six of them. */
async function takeSheets(desk: Page, name: string): Promise<void> {
  // A page that goes on to its end is one sheet without any.
  const cut = await desk.locator(".print-sheet").all();
  const sheets = cut.length > 0 ? cut : [desk.locator("main")];
  for (const [index, sheet] of sheets.slice(0, 6).entries()) {
    await sheet.scrollIntoViewIfNeeded();
    await sheet.screenshot({ path: picturePath(`paper-${name}-${index + 1}`), animations: "disabled" });
    console.log(`paper-${name}-${index + 1}`);
  }
}
