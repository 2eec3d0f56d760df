import { randomUUID } from "node:crypto";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { WritableDb } from "../../electron/store/connection/database.ts";
import { openStore } from "../../electron/store/connection/open.ts";
import type { Store } from "../../electron/store/connection/store.ts";
import { dayAtHand } from "../../electron/store/tables/days.ts";
import { recordAttempt } from "../../electron/store/tables/record.ts";
import { connectionOf } from "../store/connection.ts";
import { makeHeldStore } from "./held-store.ts";

/** The slowest entries of a long row of them, in ms, beside bare INSERTs on the same disk. */
interface TailBench {
  readonly megabytes: number;
  readonly entries: number;
  readonly medianMs: number;
  readonly p999Ms: number;
  readonly worstMs: number;
  /** The most that one entry took of the processor, which a busy disk makes no longer. */
  readonly worstCpuMs: number;
  readonly bareWorstMs: number;
  readonly bareP999Ms: number;
}

/** The most that the slowest entry may take beyond the slowest bare INSERT, in ms. */
const barMs = 20;

/** `-- tail MEGABYTES`: 20,000 entries from 500 MB on, else 3,000. */
export async function tailLines(megabytes = 50): Promise<string[]> {
  const told = await tailBench(megabytes, megabytes < 500 ? 3_000 : 20_000);
  const write = (value: number) => `${value.toFixed(1)} ms`;
  const over = told.worstMs - told.bareWorstMs;
  return [
    `${megabytes} MB, ${told.entries} entries: median ${write(told.medianMs)}, p99.9 ${write(told.p999Ms)}, worst ${write(told.worstMs)}`,
    `  bare INSERTs: p99.9 ${write(told.bareP999Ms)}, worst ${write(told.bareWorstMs)}: ${write(over)} over it (${over <= barMs ? "kept" : "NOT KEPT"})`,
    `  the most that one entry took of the processor: ${write(told.worstCpuMs)}`,
  ];
}

/** Entries by `recordAttempt` in a store of so many megabytes, by turns with bare INSERTs into a file of their own. */
async function tailBench(megabytes: number, entries: number): Promise<TailBench> {
  const folder = mkdtempSync(join(tmpdir(), "tapeline-tail-"));
  const file = join(folder, "tapeline.sqlite");
  await makeHeldStore(file, megabytes);
  const store = openStore({ file });
  const bare = openStore({ file: join(folder, "bare.sqlite") });
  try {
    // A file that is written to and never sealed: the disk alone.
    const insert = connectionOf(bare.db);
    insert.exec("CREATE TABLE bare (seq INTEGER PRIMARY KEY, seen TEXT NOT NULL) STRICT");
    const add = insert.prepare<[string], never>("INSERT INTO bare (seen) VALUES (?)");
    const enterNext = entererOf(store);
    const [ours, theirs] = [[] as number[], [] as number[]];
    let worstCpuMs = 0;
    for (let index = 0; index < entries; index += 1) {
      enterNext.prepare();
      const used = process.threadCpuUsage();
      ours.push(timed(enterNext.enter));
      const { user, system } = process.threadCpuUsage(used);
      worstCpuMs = Math.max(worstCpuMs, (user + system) / 1000);
      theirs.push(timed(() => add.run('{"how":"tally","reps":20,"offAtEnd":0}')));
    }
    const [all, plain] = [ours, theirs].map((each) => each.toSorted((a, b) => a - b));
    const at = (values: readonly number[] | undefined, share: number) =>
      values?.[Math.floor(share * (values.length - 1))] ?? Number.NaN;
    return {
      ...{
        megabytes,
        entries,
        medianMs: at(all, 0.5),
        p999Ms: at(all, 0.999),
        worstMs: at(all, 1),
        worstCpuMs,
      },
      ...{ bareP999Ms: at(plain, 0.999), bareWorstMs: at(plain, 1) },
    };
  } finally {
    store.close();
    connectionOf(bare.db).close();
    rmSync(folder, { recursive: true });
  }
}

/** Enters one attempt after another; `prepare` comes before each, and opens a new day where all of one is entered. */
export function entererOf(store: Store): { readonly prepare: () => void; readonly enter: () => void } {
  let dayId = dayAtHand(store.db)?.id ?? 0;
  let index = 0;
  return {
    prepare() {
      if (index % aDay === 0) dayId = store.write(["day"], (db) => nextDay(db, dayId));
    },
    enter() {
      store.write(["attempts"], (db) => enter(db, dayId, index % aDay));
      index += 1;
    },
  };
}

/** Closes a day and opens one with the same people; returns its id. */
function nextDay(db: WritableDb, before: number): number {
  const id = before + 1;
  db.exec(`
    UPDATE day SET state = 'closed' WHERE id = ${before};
    INSERT INTO day (id, date, title, state, rest_minutes, identity)
      SELECT ${id}, date(date, '+1 day'), title, 'open', rest_minutes, identity || '+' FROM day WHERE id = ${before};
    INSERT INTO day_protocol SELECT ${id}, test, parameters FROM day_protocol WHERE day_id = ${before};
    INSERT INTO entrant (day_id, athlete_id, state, bib, since)
      SELECT ${id}, athlete_id, state, bib, since FROM entrant WHERE day_id = ${before};`);
  return id;
}

/** In turn a push-up, both directions of the quadrant jump and a plank of each athlete. */
function enter(db: WritableDb, dayId: number, index: number): void {
  const { test, variant, seen } = kinds[index % kinds.length] ?? kinds[0];
  const athleteId = 1 + Math.floor(index / kinds.length);
  const common = { id: randomUUID(), athleteId, enteredBy: "QA", note: "", source: "station" as const };
  recordAttempt(db, dayId, { ...common, at, test, variant, seen, replaces: null });
}

const at = "2026-11-14T09:00:00.000Z";
const landings = { laps: 7, extra: 3, touches: 1 };
const kinds = [
  { test: "push-up" as const, variant: "full", seen: { how: "tally", reps: 20, offAtEnd: 0 } },
  { test: "agility" as const, variant: "", seen: { direction: "cw", ...landings } },
  { test: "agility" as const, variant: "", seen: { direction: "ccw", ...landings } },
  { test: "core" as const, variant: "", seen: { held: 95_000 } },
] as const;
/** Entries of one day: after them the next one is opened. */
const aDay = 200 * kinds.length;

function timed(work: () => unknown): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}
