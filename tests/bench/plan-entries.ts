import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { taskOf } from "../../electron/api/plan/task.ts";
import { testCodes } from "../../electron/domain/tests/registry.ts";
import { createCalculator } from "../../electron/host/calculator.ts";
import { dayById } from "../../electron/store/tables/days.ts";
import { type BoardDay, boardDay } from "../door/board-day.ts";
import { crowd } from "../door/crowd.ts";
import { timed } from "./entry.ts";

/** What an entry at the door took while something was worked out. */
export interface PlanEntriesBench {
  readonly meanwhile: "nothing" | "the forecast and the overview" | "the plan and all its changes";
  readonly entries: number;
  readonly medianMs: number;
  readonly p99Ms: number;
  /** How many calculations came to their end. */
  readonly done: number;
}

const athletes = 240;
/** Entries of one block; the three kinds take turns, so that all meet the same disk and the same stores. */
const block = 50;
/** Ms between two entries: far more than a hall has. */
const apart = 50;
const warmUp = block;

/** Does something in the background until it is told to end; returns how often it was done. */
type Background = (day: BoardDay, isOver: () => boolean) => Promise<number>;

const backgrounds: Readonly<Record<PlanEntriesBench["meanwhile"], Background>> = {
  nothing: async () => 0,
  "the forecast and the overview": forecasting,
  "the plan and all its changes": planning,
};

/** Enters all tests of 240 athletes on a real file, block by block with other work in the background. */
export async function planEntriesBench(): Promise<PlanEntriesBench[]> {
  const folder = mkdtempSync(join(tmpdir(), "tapeline-plan-entries-"));
  const calculator = createCalculator();
  const day = await boardDay(crowd(athletes), join(folder, "day.sqlite"), { calculator });
  try {
    const told = Object.entries(backgrounds).map(([meanwhile, work]) => ({
      ...{ meanwhile: meanwhile as PlanEntriesBench["meanwhile"], work },
      ...{ times: [] as number[], done: 0 },
    }));
    for (let index = 0; index < athletes * testCodes.length; index += block) {
      const one = told[(index / block) % told.length];
      if (one === undefined) continue;
      const { times, done } = await enterBlock(day, index, one.work);
      if (index >= warmUp) one.times.push(...times);
      one.done += done;
    }
    return told.map(({ meanwhile, times, done }) => ({
      meanwhile,
      entries: times.length,
      done,
      ...of(times),
    }));
  } finally {
    day.desk.close();
    rmSync(folder, { recursive: true });
  }
}

async function enterBlock(day: BoardDay, from: number, work: Background) {
  let isOver = false;
  const background = work(day, () => isOver);
  const times: number[] = [];
  for (let index = from; index < from + block; index += 1) {
    times.push((await timed(day, index)).clockMs);
    await wait(apart);
  }
  isOver = true;
  return { times, done: await background };
}

/** Asks as the organiser's screen does: after every announcement, and at least every second. */
async function forecasting({ as, desk }: BoardDay, isOver: () => boolean): Promise<number> {
  const { day } = as("organiser");
  let done = 0;
  const stop = desk.news.listen(({ topics }) => {
    if (topics.includes("forecast")) done += 1;
    else void day.forecast();
  });
  while (!isOver()) {
    await day.overview();
    await day.forecast();
    await wait(1_000);
  }
  stop();
  return done;
}

/** Works out the plan and all its changes again and again, each in its thread. */
async function planning({ desk, dayId }: BoardDay, isOver: () => boolean): Promise<number> {
  const { calculator, store } = desk;
  const day = dayById(store.db, dayId);
  if (calculator === null || day === undefined) throw new Error("The bench has no day or no threads.");
  const { task } = taskOf(store.db, day);
  let done = 0;
  const under = new Set<{ stop(): void }>();
  async function over(begin: () => { outcome: Promise<unknown>; stop(): void }): Promise<void> {
    while (!isOver()) {
      const one = begin();
      under.add(one);
      const isDone = await one.outcome.then(
        () => true,
        () => false,
      );
      under.delete(one);
      if (isDone) done += 1;
    }
  }
  const all = [
    over(() => calculator.begin<"plan">({ kind: "plan", ...task }, () => {})),
    over(() => calculator.begin<"whatIfs">({ kind: "whatIfs", ...task }, () => {})),
  ];
  while (!isOver()) await wait(50);
  for (const one of under) one.stop();
  await Promise.all(all);
  return done;
}

function of(times: readonly number[]) {
  const sorted = times.toSorted((a, b) => a - b);
  const at = (share: number) => sorted[Math.floor(share * (sorted.length - 1))] ?? Number.NaN;
  return { medianMs: at(0.5), p99Ms: at(0.99) };
}
