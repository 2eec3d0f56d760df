import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type BoardDay, boardDay } from "../door/board-day.ts";
import { crowd } from "../door/crowd.ts";
import { type Earlier, fillEarlier } from "./earlier-days.ts";
import { type Took, timed, took } from "./entry.ts";

/** What reading costs through the procedures with many results behind it, beside the same with a thousand. */
export interface ReadingBench {
  readonly procedure: string;
  readonly few: number;
  readonly many: number;
  /** The first time of a day, of the larger store, in ms of the processor. */
  readonly firstMs: number;
  /** After an entry, in ms of the processor; medians. */
  readonly fewMs: number;
  readonly manyMs: number;
  readonly ratio: number;
}

const athletes = 200;
const rounds = 9;

type Caller = ReturnType<BoardDay["as"]>;
const procedures: Readonly<Record<string, (caller: Caller, athleteId: number) => Promise<unknown>>> = {
  "board.view": (caller) => caller.board.view(),
  "day.overview": (caller) => caller.day.overview(),
  "station.view": (caller) => caller.station.view({ test: "core", most: 8 }),
  "station.find": (caller) => caller.station.find({ test: "core", bib: "7" }),
  "people.get": (caller, athleteId) => caller.people.get({ athleteId }),
  "summary.get": (caller) => caller.summary.get({}),
  "cards.list, one": (caller, athleteId) => caller.cards.list({ which: { kind: "athlete", athleteId } }),
  "cards.list, all": (caller) => caller.cards.list({ which: { kind: "all" } }),
  "noise.get": (caller) => caller.noise.get(),
};

/**
 * Reads by turns from a store with a thousand results and from one with so many, after an entry in each.
 * @param own on how many of the earlier days of the larger store today's athletes were: with 1 answers are as long as
 * those of the smaller one, with more they are longer
 */
export async function readingBench(size: number, own: number): Promise<ReadingBench[]> {
  const folder = mkdtempSync(join(tmpdir(), "tapeline-reading-"));
  try {
    const few = await storeOf(join(folder, "few.sqlite"), { name: "1 day", days: 1, apart: 7 });
    const days = Math.round(size / 1000);
    const many = await storeOf(join(folder, "many.sqlite"), {
      name: `${days} weekly`,
      days,
      apart: 7,
      own,
    });
    let index = 0;
    for (; index < athletes; index += 1) for (const { day } of [few, many]) await timed(day, index);
    const told: ReadingBench[] = [];
    for (const [procedure, read] of Object.entries(procedures)) {
      const times = { few: [] as Took[], many: [] as Took[] };
      for (let round = 0; round < rounds; round += 1) {
        for (const [name, { day }] of [["few", few] as const, ["many", many] as const]) {
          await timed(day, index);
          times[name].push(await took(() => read(day.as("organiser"), day.ids[6] ?? 0)));
        }
        index += 1;
      }
      const [fewMs, manyMs] = [median(times.few.slice(1)), median(times.many.slice(1))];
      const firstMs = times.many[0]?.cpuMs ?? Number.NaN;
      const counts = { few: few.marks, many: many.marks };
      told.push({ procedure, ...counts, firstMs, fewMs, manyMs, ratio: manyMs / fewMs });
    }
    for (const { day } of [few, many]) day.desk.store.close();
    return told;
  } finally {
    rmSync(folder, { recursive: true });
  }
}

async function storeOf(file: string, earlier: Earlier) {
  const day = await boardDay(
    crowd(athletes).map((each) => ({ ...each, category: "women", share: true })),
    file,
  );
  return { day, marks: fillEarlier(day, earlier) };
}

function median(times: readonly Took[]): number {
  const sorted = times.map(({ cpuMs }) => cpuMs).toSorted((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
}
