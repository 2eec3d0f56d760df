import { randomUUID } from "node:crypto";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fingerprint } from "../../electron/domain/tests/fingerprint.ts";
import { defaultParameters, testCodes } from "../../electron/domain/tests/registry.ts";
import type { Database, WritableDb } from "../../electron/store/connection/database.ts";
import { openStore } from "../../electron/store/connection/open.ts";
import { addAthlete, leagueNamed } from "../../electron/store/tables/athletes.ts";
import { addDay, setDayState } from "../../electron/store/tables/days.ts";
import { setEntrant } from "../../electron/store/tables/entrants.ts";
import { addPastMark } from "../../electron/store/tables/past-marks.ts";
import { recordAttempt } from "../../electron/store/tables/record.ts";
import { connectionOf } from "../store/connection.ts";

/** What recording costs beside the least that the same durability can cost. */
export interface RecordBench {
  /** Median of recording an attempt with its mark, committed to the disk, in ms. */
  readonly recordMs: number;
  /** Median of one bare prepared INSERT, a commit of its own, same settings, in ms. */
  readonly insertMs: number;
  readonly ratio: number;
  readonly target: number;
  readonly each: number;
}

const warmUp = 100;
const measured = 600;
const athletes = 200;
const at = "2026-11-14T09:00:00.000Z";

/**
 * Records attempts as `station.enter` does (`recordAttempt` inside `store.write`, on a real file) and alternates each
 * with a bare INSERT of the same row into a second file with the same settings, so that both meet the same disk.
 */
export function recordBench(): RecordBench {
  const folder = mkdtempSync(join(tmpdir(), "tapeline-bench-"));
  const store = openStore({ file: join(folder, "store.sqlite") });
  const bare = openStore({ file: join(folder, "bare.sqlite") });
  try {
    const day = store.write([], fill);
    connectionOf(
      bare.db,
    ).exec(`CREATE TABLE bare (seq INTEGER PRIMARY KEY, id TEXT NOT NULL, day_id INTEGER, athlete_id INTEGER,
      test TEXT, variant TEXT, slot TEXT, seen TEXT, entered_by TEXT, note TEXT, source TEXT, at TEXT) STRICT`);
    const insertBare = bareInsert(connectionOf(bare.db));
    const times = { record: [] as number[], insert: [] as number[] };
    for (let index = 0; index < warmUp + measured; index += 1) {
      const record = timed(() => store.write(["attempts", "calls"], (db) => enter(db, day, index)));
      const insert = timed(() => insertBare(index));
      if (index < warmUp) continue;
      times.record.push(record);
      times.insert.push(insert);
    }
    const [recordMs, insertMs] = [median(times.record), median(times.insert)];
    return { recordMs, insertMs, ratio: recordMs / insertMs, target: 2.5, each: measured };
  } finally {
    store.close();
    bare.close();
    rmSync(folder, { recursive: true });
  }
}

function timed(work: () => unknown): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}

function median(times: readonly number[]): number {
  const sorted = times.toSorted((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? 0;
}

/** A day with enough athletes for every attempt, each with a mark from before. */
function fill(db: WritableDb): { dayId: number; ids: number[] } {
  const protocols = testCodes.map((test) => ({ test, parameters: defaultParameters(test) }));
  const dayId = addDay(db, { date: "2026-11-14", title: "Bench", restMinutes: 5 }, protocols);
  setDayState(db, dayId, "open");
  const ids = Array.from({ length: athletes }, (_, index) => {
    const athleteId = addAthlete(db, {
      leagueId: leagueNamed(db, "Foundry Town"),
      ...{ name: `Skater ${index}`, number: String(index), birthYear: null, category: null },
      ...{ guardianConsent: false, board: "bib", share: false, asked: false },
    });
    setEntrant(db, dayId, { athleteId, state: "testing", bib: index + 1, since: at });
    const name = fingerprint("core", "", defaultParameters("core"));
    const before = { date: "2026-08-01", test: "core" as const, variant: "", value: 80 };
    addPastMark(db, { athleteId, fingerprint: name, ...before });
    return athleteId;
  });
  return { dayId, ids };
}

/** In turn a push-up, both directions of the quadrant jump and a plank of each athlete. */
function enter(db: WritableDb, day: { dayId: number; ids: number[] }, index: number): void {
  const athleteId = day.ids[Math.floor(index / 4)] ?? 0;
  const common = { id: randomUUID(), athleteId, enteredBy: "QA", note: "", source: "station" as const, at };
  const jump = { test: "agility" as const, variant: "", laps: 7, extra: 3, touches: 1 };
  const { test: agility, variant, ...landings } = jump;
  const kinds = [
    { test: "push-up" as const, variant: "full", seen: { how: "tally", reps: 20, offAtEnd: 0 } },
    { test: agility, variant, seen: { direction: "cw", ...landings } },
    { test: agility, variant, seen: { direction: "ccw", ...landings } },
    { test: "core" as const, variant: "", seen: { held: 95_000 } },
  ] as const;
  const kind = kinds[index % 4] ?? kinds[0];
  recordAttempt(db, day.dayId, { ...common, ...kind, replaces: null });
}

function bareInsert(db: Database): (index: number) => void {
  const sql = `INSERT INTO bare (id, day_id, athlete_id, test, variant, slot, seen, entered_by, note, source, at)
    VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`;
  const seen = '{"how":"tally","reps":20,"offAtEnd":0}';
  const insert = db.prepare<unknown[], never>(sql);
  return (index) => {
    insert.run(randomUUID(), 1, index, "push-up", "full", "", seen, "QA", "", "station", at);
  };
}
