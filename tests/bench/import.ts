import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { performance } from "node:perf_hooks";
import Papa from "papaparse";
import type { Desk } from "../../electron/api/door/desk.ts";
import { planSheet, readSheet, takeSheet } from "../../electron/api/intake/sheet.ts";
import { createDesk } from "../../electron/api/make-desk.ts";
import { defaultParameters, testCodes } from "../../electron/domain/tests/registry.ts";
import { demoSheetsIn } from "../../electron/host/demo-sheets.ts";
import { monotonic } from "../../electron/host/monotonic.ts";
import type { Database } from "../../electron/store/connection/database.ts";
import { openStore } from "../../electron/store/connection/open.ts";
import { addDay } from "../../electron/store/tables/days.ts";
import { connectionOf } from "../store/connection.ts";

/** Medians over the rounds, in ms; `ratio` is ours over bare. */
export interface ImportBench {
  readonly rows: number;
  readonly bareMs: number;
  readonly oursMs: number;
  readonly ratio: number;
  /** The preview that comes before: reading and planning, without writing. */
  readonly previewMs: number;
  /** Preview and taking in together over bare. */
  readonly wholeRatio: number;
  readonly target: number;
}

const rows = 5000;

/**
 * Taking in a roster of 5,000 rows (decode, split, check, compare, write, one durable commit) against the library's
 * split and bare prepared INSERTs of the same rows in one transaction with the same settings. Each round has new files.
 */
export async function importBench(rounds = 9): Promise<ImportBench> {
  const bytes = new TextEncoder().encode(rosterText());
  const times: { bare: number; ours: number; preview: number }[] = [];
  for (let round = 0; round < rounds + 2; round += 1) {
    const bare = await inNewStore((desk, dayId) => insertBare(connectionOf(desk.store.db), dayId, bytes));
    const preview = await inNewStore(async (desk) => {
      planSheet(desk.store.db, await readSheet(desk, "roster", bytes), desk.now().toISOString());
    });
    const ours = await inNewStore(async (desk) => {
      const { counts } = await takeSheet(desk, "roster", bytes);
      if (counts.new !== rows) throw new Error(`Only ${counts.new} of ${rows} rows were taken.`);
    });
    // The first two rounds only warm up.
    if (round >= 2) times.push({ bare, ours, preview });
  }
  const bareMs = median(times.map(({ bare }) => bare));
  const oursMs = median(times.map(({ ours }) => ours));
  const previewMs = median(times.map(({ preview }) => preview));
  const wholeRatio = (previewMs + oursMs) / bareMs;
  return { rows, bareMs, oursMs, ratio: oursMs / bareMs, previewMs, wholeRatio, target: 3 };
}

function rosterText(): string {
  const lines = Array.from({ length: rows }, (_, row) => {
    const category = ["women", "men", "open", ""][row % 4];
    return `League ${row % 20},Skater Number ${row},${row},${1970 + (row % 40)},${category},bib,${row % 2 ? "yes" : "no"}`;
  });
  return `league,name,number,birth_year,category,board,share\r\n${lines.join("\r\n")}\r\n`;
}

/** Runs `work` on a store in a new file with a planned day; returns how long the work took, in ms. */
async function inNewStore(work: (desk: Desk, dayId: number) => unknown): Promise<number> {
  const folder = mkdtempSync(join(tmpdir(), "import-bench-"));
  const open = () => openStore({ file: join(folder, "tapeline.db") });
  const demoSheets = demoSheetsIn(join(import.meta.dirname, "../../resources/demo"));
  const now = () => new Date("2026-11-14T09:00:00Z");
  const desk = createDesk({ open, now, monotonic, random: () => 0.5, demoSheets });
  try {
    const dayId = desk.store.write(["day"], (db) => addDay(db, plannedDay, protocols));
    const start = performance.now();
    await work(desk, dayId);
    return performance.now() - start;
  } finally {
    desk.close();
    rmSync(folder, { recursive: true });
  }
}

const plannedDay = { date: "2026-11-14", title: "Bench", restMinutes: 5 };
const protocols = testCodes.map((test) => ({ test, parameters: defaultParameters(test) }));

/** What nobody could leave out: split the text, and put the same rows into the same tables. */
function insertBare(db: Database, dayId: number, bytes: Uint8Array): void {
  const text = new TextDecoder().decode(bytes);
  const { data } = Papa.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true });
  const athlete = db.prepare<unknown[], never>(`INSERT INTO athlete
    (league_id, name, folded, number, birth_year, category, guardian_consent, board, share, asked)
    VALUES (?, ?, ?, ?, ?, ?, 0, ?, ?, 0)`);
  const entrant = db.prepare<unknown[], never>(
    "INSERT INTO entrant (day_id, athlete_id, state, since) VALUES (?, ?, 'expected', '2026-11-14T09:00:00.000Z')",
  );
  const league = db.prepare<unknown[], never>("INSERT INTO league (name, folded) VALUES (?, ?)");
  const leagues = new Map<string, unknown>();
  db.exec("BEGIN IMMEDIATE");
  for (const row of data) {
    const name = row.league ?? "";
    if (!leagues.has(name)) leagues.set(name, league.run(name, name.toLowerCase()).lastInsertRowid);
    const year = Number(row.birth_year);
    const share = row.share === "yes" ? 1 : 0;
    const { lastInsertRowid } = athlete.run(
      leagues.get(name),
      row.name,
      row.name?.toLowerCase(),
      row.number,
      year,
      row.category || null,
      row.board,
      share,
    );
    entrant.run(dayId, lastInsertRowid);
  }
  db.exec("COMMIT");
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
}
