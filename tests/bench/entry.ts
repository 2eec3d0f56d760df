import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fingerprint } from "../../electron/domain/tests/fingerprint.ts";
import { defaultParameters, protocolOf, testCodes } from "../../electron/domain/tests/registry.ts";
import { addPastMark } from "../../electron/store/tables/past-marks.ts";
import { type BoardDay, boardDay } from "../door/board-day.ts";
import { crowd } from "../door/crowd.ts";
import { entry, hold, jump, reps, ticket, trial } from "../door/station-day.ts";

/** What an entry costs at the door, from the request to the answer read, with so much behind it. */
export interface EntryBench {
  readonly history: string;
  readonly marks: number;
  readonly medianMs: number;
  readonly p99Ms: number;
  /** Time of the processor an entry, which a busy machine makes no longer. */
  readonly cpuMs: number;
  /** The processor's time against that in a store without history, whose entries take turns with these. */
  readonly ratio: number;
}

const athletes = 200;
const warmUp = 100;

/** Earlier tests of everybody: how many, and so many days apart. */
const histories = [
  { history: "none", days: 0, apart: 0 },
  { history: "10 weekly", days: 10, apart: 7 },
  { history: "20 monthly", days: 20, apart: 28 },
] as const;

/** Enters all five tests of 200 athletes at the door of a real file, in stores of different histories by turns. */
export async function entryBench(): Promise<EntryBench[]> {
  const folder = mkdtempSync(join(tmpdir(), "tapeline-entry-"));
  try {
    const stores = [];
    for (const each of histories) {
      const day = await boardDay(crowd(athletes), join(folder, `${each.days}.sqlite`));
      stores.push({ ...each, day, marks: remember(day, each), times: [] as Took[] });
    }
    for (let index = 0; index < athletes * testCodes.length; index += 1) {
      for (const { day, times } of stores) times.push(await timed(day, index));
    }
    const told = stores.map(({ history, marks, times }) => ({ history, marks, ...of(times.slice(warmUp)) }));
    for (const { day } of stores) day.desk.store.close();
    return told.map((each) => ({ ...each, ratio: each.cpuMs / (told[0]?.cpuMs ?? Number.NaN) }));
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** Gives everybody an earlier mark of each test on each of the days; returns how many. */
function remember({ desk, ids }: BoardDay, { days, apart }: (typeof histories)[number]): number {
  const newest = Date.parse("2026-10-31T00:00:00Z");
  const dates = Array.from({ length: days }, (_, at) =>
    new Date(newest - at * apart * 86_400_000).toISOString().slice(0, 10),
  );
  desk.store.write(["people"], (db) => {
    for (const date of dates) {
      for (const [at, athleteId] of ids.entries()) {
        for (const test of testCodes) {
          const [variant = ""] = protocolOf(test).variants;
          const value = (usual[test] * (95 + ((at * 7 + Number(date.slice(-2))) % 11))) / 100;
          const name = fingerprint(test, variant, defaultParameters(test));
          addPastMark(db, {
            ...{ athleteId, fingerprint: name, date, test, variant },
            value: Math.round(value),
          });
        }
      }
    }
  });
  return dates.length * ids.length * testCodes.length;
}

const usual = { "push-up": 20, agility: 118, vertical: 8000, core: 95, endurance: 370_000 } as const;
const seen = {
  "push-up": [reps(21)],
  agility: [trial("cw", 7, 3), trial("ccw", 7, 1)],
  vertical: [jump(2100, 2500)],
  core: [hold(96)],
  endurance: [{ finished: true, time: 371_000 }],
} as const;

/** How long one entry took, by the clock and by the processor, in ms. */
interface Took {
  readonly clockMs: number;
  readonly cpuMs: number;
}

/** Enters one test of one athlete: the tests of each in turn. */
export async function timed({ handle, ids }: BoardDay, index: number): Promise<Took> {
  const test = testCodes[index % testCodes.length] ?? testCodes[0];
  const athleteId = ids[Math.floor(index / testCodes.length)] ?? 0;
  const body = JSON.stringify(entry(athleteId, test, null, { attempts: seen[test].map(ticket), sure: true }));
  const headers = { "content-type": "application/json" };
  const request = new Request("http://desk/trpc/station.enter", { method: "POST", headers, body });
  const [start, used] = [performance.now(), process.cpuUsage()];
  const response = await handle(request, "organiser");
  const answer = await response.text();
  const clockMs = performance.now() - start;
  const { user, system } = process.cpuUsage(used);
  if (!answer.includes('"saved"')) throw new Error(`Not saved: ${answer}`);
  return { clockMs, cpuMs: (user + system) / 1000 };
}

function of(times: readonly Took[]) {
  const sorted = times.map(({ clockMs }) => clockMs).toSorted((a, b) => a - b);
  const at = (share: number) => sorted[Math.floor(share * (sorted.length - 1))] ?? Number.NaN;
  const cpuMs = times.reduce((sum, took) => sum + took.cpuMs, 0) / times.length;
  return { medianMs: at(0.5), p99Ms: at(0.99), cpuMs };
}
