/**
 * One measurement of taking a sheet in, in a process of its own, so that nothing of it has run before, as in a hall:
 * `import-once.ts KIND ROWS WHAT`. Writes the figures as JSON.
 */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setImmediate, setTimeout } from "node:timers/promises";
import { planSheet, readSheet, takeSheet } from "../../electron/api/intake/sheet.ts";
import { defaultParameters, testCodes } from "../../electron/domain/tests/registry.ts";
import { addAthlete, leagueNamed } from "../../electron/store/tables/athletes.ts";
import { addDay, setDayState } from "../../electron/store/tables/days.ts";
import { setEntrant } from "../../electron/store/tables/entrants.ts";
import { type TestDesk, testDesk } from "../door/desk.ts";
import { entry, reps, ticket } from "../door/station-day.ts";
import { connectionOf } from "../store/connection.ts";
import { athletesOf, insertResults, insertRoster, resultsText, rosterText } from "./import-sheets.ts";

/** The figures of one measurement, in ms. */
export interface ImportOnce {
  readonly tookMs: number;
  /** Time of the processor, which a busy machine makes no longer. */
  readonly cpuMs: number;
  /** The longest that the thread did nothing else. */
  readonly pauseMs: number;
  /** The longest that an entry waited, from when it was due to its answer; null where none was entered. */
  readonly waitMs: number | null;
}

export type ImportWhat = "bare" | "preview" | "take" | "entries";

/** Athletes beside those of the sheet, who are entered at the station meanwhile. */
const others = 400;
const now = "2026-11-14T09:00:00.000Z";
/** Ms between two entries: more than a hall ever sends. */
const pace = 10;

async function measure(sheet: "roster" | "results", rows: number, doing: ImportWhat): Promise<ImportOnce> {
  const folder = mkdtempSync(join(tmpdir(), "import-bench-"));
  const table = testDesk(join(folder, "tapeline.sqlite"));
  try {
    const sheetAthletes = sheet === "results" ? athletesOf(rows) : 0;
    const dayId = holdDay(table, sheetAthletes + (doing === "entries" ? others : 0));
    const bytes = new TextEncoder().encode(sheet === "roster" ? rosterText(rows) : resultsText(rows));
    const insert = sheet === "roster" ? insertRoster : insertResults;
    const works: Readonly<Record<ImportWhat, () => unknown>> = {
      bare: () => insert(connectionOf(table.desk.store.db), dayId, bytes),
      preview: async () => planSheet(table.desk.store.db, await readSheet(table.desk, sheet, bytes), now),
      take: () => taken(table, sheet, bytes, rows),
      entries: () => taken(table, sheet, bytes, rows),
    };
    if (doing !== "entries") return await watched(works[doing], null);
    // What a table has done all morning by the time a sheet comes.
    for (let index = 0; index < others / 2; index += 1) await enter(table, sheetAthletes + 1 + index);
    return await watched(works.entries, (index) => enter(table, sheetAthletes + 1 + others / 2 + index));
  } finally {
    table.desk.close();
    rmSync(folder, { recursive: true });
  }
}

async function taken(table: TestDesk, sheet: "roster" | "results", bytes: Uint8Array, rows: number) {
  const { counts } = await takeSheet(table.desk, sheet, bytes);
  if (counts.new !== rows) throw new Error(`Only ${counts.new} of ${rows} rows were taken.`);
}

/** An open day with so many athletes here, whose ids are their bibs. */
function holdDay({ desk }: TestDesk, athletes: number): number {
  return desk.store.write(["day"], (db) => {
    const protocols = testCodes.map((test) => ({ test, parameters: defaultParameters(test) }));
    const dayId = addDay(db, { date: now.slice(0, 10), title: "Bench", restMinutes: 5 }, protocols);
    setDayState(db, dayId, "open");
    const leagueId = athletes === 0 ? 0 : leagueNamed(db, "Foundry Town");
    for (let bib = 1; bib <= athletes; bib += 1) {
      const athleteId = addAthlete(db, {
        leagueId,
        ...{ name: `Skater ${bib}`, number: String(bib), birthYear: null, category: null },
        ...{ guardianConsent: false, board: "bib", share: false, asked: false },
      });
      setEntrant(db, dayId, { athleteId, state: "testing", bib, since: now });
    }
    return dayId;
  });
}

async function enter({ handle }: TestDesk, athleteId: number): Promise<void> {
  const body = JSON.stringify(
    entry(athleteId, "push-up", null, { attempts: [ticket(reps(21))], sure: true }),
  );
  const headers = { "content-type": "application/json" };
  const request = new Request("http://desk/trpc/station.enter", { method: "POST", headers, body });
  const answer = await (await handle(request, "organiser")).text();
  if (!answer.includes('"saved"')) throw new Error(`Not saved: ${answer}`);
}

/** Runs some work, watching how long the thread does nothing else, and entering at a steady pace where asked to. */
async function watched(
  work: () => unknown,
  entering: ((index: number) => Promise<void>) | null,
): Promise<ImportOnce> {
  let running = true;
  const pauses = longestPause(() => running);
  const waits = entering === null ? null : longestWait(() => running, entering);
  await setImmediate();
  const [start, used] = [performance.now(), process.threadCpuUsage()];
  await work();
  const { user, system } = process.threadCpuUsage(used);
  const tookMs = performance.now() - start;
  running = false;
  return { tookMs, cpuMs: (user + system) / 1000, pauseMs: await pauses, waitMs: await waits };
}

async function longestPause(isRunning: () => boolean): Promise<number> {
  let [longest, before] = [0, performance.now()];
  while (isRunning()) {
    await setTimeout(1);
    const turn = performance.now();
    longest = Math.max(longest, turn - before);
    before = turn;
  }
  return longest;
}

/** Each entry counts from when it was due: one that could not even be sent has waited too. */
async function longestWait(
  isRunning: () => boolean,
  entering: (index: number) => Promise<void>,
): Promise<number> {
  let [longest, due] = [0, performance.now()];
  for (let index = 0; isRunning() && index < others / 2; index += 1) {
    await setTimeout(Math.max(0, due - performance.now()));
    await entering(index);
    longest = Math.max(longest, performance.now() - due);
    due = Math.max(due + pace, performance.now());
  }
  return longest;
}

const [kind, count, what] = process.argv.slice(2) as ["roster" | "results", string, ImportWhat];
process.stdout.write(JSON.stringify(await measure(kind, Number(count), what)));
