import { randomUUID } from "node:crypto";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fingerprint } from "../../electron/domain/tests/fingerprint.ts";
import {
  defaultParameters,
  protocolOf,
  rulesVersion,
  type TestCode,
  testCodes,
} from "../../electron/domain/tests/registry.ts";
import { type BoardDay, boardDay } from "../door/board-day.ts";
import { crowd } from "../door/crowd.ts";
import { entry, hold, jump, reps, ticket, trial } from "../door/station-day.ts";
import { connectionOf } from "../store/connection.ts";
import { type Earlier, fillEarlier } from "./earlier-days.ts";

/** What an entry costs at the door, from the request to the answer read, with so much behind it. */
export interface EntryBench {
  readonly history: string;
  readonly marks: number;
  readonly medianMs: number;
  readonly p99Ms: number;
  /** Median of the processor's time an entry, which a busy machine makes little longer. */
  readonly cpuMs: number;
  /** The processor's time against that in a store without history, whose entries take turns with these. */
  readonly ratio: number;
  /** Clock and processor against the bare part, which takes turns with them too. */
  readonly overBare: { readonly clock: number; readonly cpu: number };
}

const athletes = 200;
const warmUp = 200;

const none: Earlier = { name: "none", days: 0, apart: 0 };

/** The histories of up to so many results. */
function histories(size: number): Earlier[] {
  const all: Earlier[] = [
    { name: "1 day", days: 1, apart: 7 },
    { name: "10 weekly", days: 10, apart: 7 },
    { name: "10 monthly", days: 10, apart: 28 },
    { name: "100 weekly", days: 100, apart: 7 },
    { name: "100 monthly", days: 100, apart: 28 },
    { name: "100 imported weekly", days: 100, apart: 7, imported: true },
    { name: "1,000 weekly, each league 20", days: 1_000, apart: 7, own: 20 },
    { name: "1,000 weekly of the same people", days: 1_000, apart: 7 },
  ];
  return [none, ...all.filter(({ days }) => days * athletes * testCodes.length <= size)];
}

/**
 * Enters all five tests of 200 athletes at the door of a real file, in stores of different histories by turns with each
 * other and with the bare part: attempts and mark into the same tables, in one commit.
 */
export async function entryBench(size: number): Promise<EntryBench[]> {
  const folder = mkdtempSync(join(tmpdir(), "tapeline-entry-"));
  try {
    const bare = await boardDay(crowd(athletes), join(folder, "bare.sqlite"));
    const enterBare = bareEntry(bare);
    const bareTimes: Took[] = [];
    const stores = [];
    for (const [at, earlier] of histories(size).entries()) {
      const day = await boardDay(crowd(athletes), join(folder, `${at}.sqlite`));
      stores.push({ ...earlier, day, marks: fillEarlier(day, earlier), times: [] as Took[] });
    }
    for (let index = 0; index < athletes * testCodes.length; index += 1) {
      bareTimes.push(await took(async () => enterBare(index)));
      for (const { day, times } of stores) times.push(await timed(day, index));
    }
    for (const { day } of [...stores, { day: bare }]) day.desk.store.close();
    const least = of(bareTimes.slice(warmUp));
    const told = stores.map(({ name, marks, times }) => ({
      history: name,
      marks,
      ...of(times.slice(warmUp)),
    }));
    return told.map((each) => ({
      ...each,
      ratio: each.cpuMs / (told[0]?.cpuMs ?? Number.NaN),
      overBare: { clock: each.medianMs / least.medianMs, cpu: each.cpuMs / least.cpuMs },
    }));
  } finally {
    rmSync(folder, { recursive: true });
  }
}

const seen = {
  "push-up": [reps(21)],
  agility: [trial("cw", 7, 3), trial("ccw", 7, 1)],
  vertical: [jump(2100, 2500)],
  core: [hold(96)],
  endurance: [{ finished: true, time: 371_000 }],
} as const;

/** The tests of each athlete in turn. */
function inTurn({ ids }: BoardDay, index: number): { test: TestCode; athleteId: number } {
  const test = testCodes[index % testCodes.length] ?? testCodes[0];
  return { test, athleteId: ids[Math.floor(index / testCodes.length)] ?? 0 };
}

/** Makes the bare part of an entry: its rows in the tables that the door writes, in one commit with the same settings. */
function bareEntry(day: BoardDay): (index: number) => void {
  const db = connectionOf(day.desk.store.db);
  const [begin, commit] = ["BEGIN IMMEDIATE", "COMMIT"].map((sql) => db.prepare<[], never>(sql));
  const attempt = db.prepare<unknown[], never>(
    `INSERT INTO attempt (id, day_id, athlete_id, test, variant, slot, seen, entered_by, note, source, at, performed)
     VALUES (?, ?, ?, ?, ?, ?, ?, 'QA', '', 'station', ?, ?)`,
  );
  const mark = db.prepare<unknown[], never>(
    `INSERT INTO mark (athlete_id, test, variant, day_id, fingerprint, state, value, detail, seq, rules, position, rest_minutes)
     VALUES (?, ?, ?, ?, ?, 'complete', 21, '{"state":"complete","value":21}', ?, ${rulesVersion}, 1, NULL)`,
  );
  const names = new Map(
    testCodes.map((test) => [test, fingerprint(test, variantOf(test), defaultParameters(test))]),
  );
  const at = "2026-11-14T09:00:00.000Z";
  return (index) => {
    const { test, athleteId } = inTurn(day, index);
    const variant = variantOf(test);
    begin?.run();
    let seq: number | bigint = 0;
    for (const [nth, each] of seen[test].entries()) {
      const values = [
        randomUUID(),
        day.dayId,
        athleteId,
        test,
        variant,
        String(nth),
        JSON.stringify(each),
        at,
        at,
      ];
      seq = attempt.run(...values).lastInsertRowid;
    }
    mark.run(athleteId, test, variant, day.dayId, names.get(test), Number(seq));
    commit?.run();
  };
}

const variantOf = (test: TestCode) => protocolOf(test).variants[0] ?? "";

/** How long one entry took, by the clock and by the processor, in ms. */
export interface Took {
  readonly clockMs: number;
  readonly cpuMs: number;
}

/** Enters one test of one athlete: the tests of each in turn. */
export async function timed(day: BoardDay, index: number): Promise<Took> {
  const { test, athleteId } = inTurn(day, index);
  const body = JSON.stringify(entry(athleteId, test, null, { attempts: seen[test].map(ticket), sure: true }));
  const headers = { "content-type": "application/json" };
  const request = new Request("http://desk/trpc/station.enter", { method: "POST", headers, body });
  return took(async () => {
    const answer = await (await day.handle(request, "organiser")).text();
    if (!answer.includes('"saved"')) throw new Error(`Not saved: ${answer}`);
  });
}

/** Times some work. */
export async function took(work: () => Promise<unknown>): Promise<Took> {
  const [start, used] = [performance.now(), process.cpuUsage()];
  await work();
  const clockMs = performance.now() - start;
  const { user, system } = process.cpuUsage(used);
  return { clockMs, cpuMs: (user + system) / 1000 };
}

function of(times: readonly Took[]) {
  const clock = times.map(({ clockMs }) => clockMs).toSorted((a, b) => a - b);
  const cpu = times.map(({ cpuMs }) => cpuMs).toSorted((a, b) => a - b);
  const at = (sorted: readonly number[], share: number) =>
    sorted[Math.floor(share * (sorted.length - 1))] ?? Number.NaN;
  return { medianMs: at(clock, 0.5), p99Ms: at(clock, 0.99), cpuMs: at(cpu, 0.5) };
}
