import Papa from "papaparse";
import { fingerprint } from "../../electron/domain/tests/fingerprint.ts";
import { defaultParameters, protocolOf, type TestCode } from "../../electron/domain/tests/registry.ts";
import type { Database } from "../../electron/store/connection/database.ts";

/** Somebody's eight attempts at the five tests, each as a row of a sheet has it from `test` on, and as it is kept. */
const tries: readonly { test: TestCode; cells: string; slot: string; seen: unknown }[] = [
  {
    test: "push-up",
    cells: "push-up,full,,23,3,,,,,,",
    slot: "",
    seen: { how: "tally", reps: 23, offAtEnd: 3 },
  },
  { test: "agility", cells: "agility,,cw,,,7,3,,,,", slot: "cw", seen: landings("cw", 7, 3) },
  { test: "agility", cells: "agility,,ccw,,,7,1,,,,", slot: "ccw", seen: landings("ccw", 7, 1) },
  { test: "vertical", cells: "vertical,,,,,,,210,250,,", slot: "", seen: leap(25_000) },
  { test: "vertical", cells: "vertical,,,,,,,210,251,,", slot: "", seen: leap(25_100) },
  { test: "vertical", cells: "vertical,,,,,,,210,249,,", slot: "", seen: leap(24_900) },
  { test: "core", cells: "core,,,,,,,,,1:35,", slot: "", seen: { held: 95_000 } },
  {
    test: "endurance",
    cells: "endurance,,,,,,,,,6:11.0,yes",
    slot: "",
    seen: { finished: true, time: 371_000 },
  },
];

function landings(direction: string, laps: number, extra: number) {
  return { direction, laps, extra, touches: 0 };
}

function leap(touchReach: number) {
  return { standingReach: 21_000, touchReach };
}

/** How many athletes bring so many rows of results. */
export function athletesOf(rows: number): number {
  return rows / tries.length;
}

/** Results of bibs 1, 2, 3 …: eight rows of each. */
export function resultsText(rows: number): string {
  const lines = Array.from({ length: rows }, (_, row) => {
    const cells = tries[row % tries.length]?.cells ?? "";
    return `${1 + Math.floor(row / tries.length)},${cells},KL`;
  });
  const fields =
    "bib,test,variant,direction,reps,missed_at_end,laps,extra_quadrants,standing_reach,touch_reach,time,finished,entered_by";
  return `${fields}\r\n${lines.join("\r\n")}\r\n`;
}

export function rosterText(rows: number): string {
  const lines = Array.from({ length: rows }, (_, row) => {
    const category = ["women", "men", "open", ""][row % 4];
    return `League ${row % 20},Skater Number ${row},${row % 10_000},${1970 + (row % 40)},${category},bib,${row % 2 ? "yes" : "no"}`;
  });
  return `league,name,number,birth_year,category,board,share\r\n${lines.join("\r\n")}\r\n`;
}

/** What nobody could leave out: split the text, and put the same attempts and their marks into the same tables. */
export function insertResults(db: Database, dayId: number, bytes: Uint8Array): void {
  const { data } = split(bytes);
  const attempt = db.prepare<unknown[], never>(`INSERT INTO attempt
    (id, day_id, athlete_id, test, variant, slot, seen, entered_by, note, source, at)
    VALUES (?, ?, ?, ?, ?, ?, ?, ?, '', 'sheet', '2026-11-14T09:00:00.000Z')`);
  const mark = db.prepare<unknown[], never>(`INSERT INTO mark
    (athlete_id, test, variant, day_id, fingerprint, state, value, detail, seq, rules)
    VALUES (?, ?, ?, ?, ?, 'complete', ?, ?, ?, 1)`);
  const kept = tries.map(({ test, slot, seen }) => {
    const [variant = ""] = protocolOf(test).variants;
    const name = fingerprint(test, variant, defaultParameters(test));
    return { test, slot, variant, name, seen: JSON.stringify(seen) };
  });
  const detail = '{"state":"complete","value":100,"trials":{"done":1,"of":1}}';
  db.exec("BEGIN IMMEDIATE");
  for (const [index, row] of data.entries()) {
    const each = kept[index % kept.length];
    if (each === undefined) continue;
    const { test, slot, variant, name, seen } = each;
    const id = `10000000-0000-8000-8000-${String((index * 7_919) % data.length).padStart(12, "0")}`;
    const athleteId = Number(row.bib);
    const { lastInsertRowid } = attempt.run(id, dayId, athleteId, test, variant, slot, seen, row.entered_by);
    const isLast = kept[(index + 1) % kept.length]?.test !== test;
    if (isLast) mark.run(athleteId, test, variant, dayId, name, 100, detail, lastInsertRowid);
  }
  db.exec("COMMIT");
}

/** The same of a roster: athletes, leagues and the day's list. */
export function insertRoster(db: Database, dayId: number, bytes: Uint8Array): void {
  const { data } = split(bytes);
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
    const folded = row.name?.toLowerCase();
    const facts = [row.name, folded, row.number, year, row.category || null, row.board, share];
    const { lastInsertRowid } = athlete.run(leagues.get(name), ...facts);
    entrant.run(dayId, lastInsertRowid);
  }
  db.exec("COMMIT");
}

function split(bytes: Uint8Array): Papa.ParseResult<Record<string, string>> {
  return Papa.parse(new TextDecoder().decode(bytes), { header: true, skipEmptyLines: true });
}
