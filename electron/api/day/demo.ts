import { clockOf, isoDate } from "../door/calendar.ts";
import type { Desk } from "../door/desk.ts";
import { allow } from "../door/trpc.ts";
import type { ReadSheet } from "../intake/read.ts";
import { readSheet } from "../intake/sheet.ts";
import { type DemoScript, fillDemo, minuteOfDemo } from "./demo-day.ts";
import { castOf } from "./demo-floor.ts";
import { demoRows, sheetOf } from "./demo-sheets.ts";

/** Opens the demo: a store of its own, with a day being held right now. The hall's own is closed and stays as is. */
export const openDemo = allow("organiser").mutation(async ({ ctx: { desk } }) => {
  const instant = desk.now();
  const today = isoDate(instant);
  const script = await readScript(desk, today, instant);
  desk.use("own");
  desk.use("demo");
  try {
    desk.store.write(["day", "people", "entrants", "attempts", "calls"], (db) =>
      fillDemo(db, script, { today, instant, language: desk.language }),
    );
  } catch (error) {
    desk.use("own");
    throw error;
  }
});

/** Returns to the hall's own store, as it was left. Leaving twice changes nothing. */
export const leaveDemo = allow("organiser").mutation(({ ctx: { desk } }) => desk.use("own"));

/** Reads everything before the store changes, so that nobody sees a half-made demo. */
async function readScript(desk: Desk, today: string, instant: Date): Promise<DemoScript> {
  const rows = demoRows(desk.demoSheets(), today);
  const cast = castOf(rows, today);
  const results: ReadSheet[] = [];
  for (const { minute, rows: some } of cast.batches) {
    // By the one instant of the demo: the reading takes a while, and what was done a minute later is still to come.
    const done_at = clockOf(minuteOfDemo(instant, minute));
    const timed = some.map((row) => ({ ...row, done_at }));
    results.push(await readSheet(desk, "results", sheetOf("results", timed)));
  }
  const roster = await readSheet(desk, "roster", sheetOf("roster", rows.roster));
  const past = await readSheet(desk, "past", sheetOf("past", rows.past));
  return { roster, past, results, cast };
}
