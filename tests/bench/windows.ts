import { randomUUID } from "node:crypto";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { ElectronApplication, Page } from "@playwright/test";
import { quantile } from "../../electron/domain/statistics/quantile.ts";
import { boardDay } from "../door/board-day.ts";
import { crowd } from "../door/crowd.ts";
import { closeApp, launchApp, pageOf, prepareStage } from "../e2e/launch.ts";
import { armPaint, paintedAt, watchPaints } from "./paints.ts";

/** Median and 95th percentile, in ms. */
export interface Spread {
  readonly median: number;
  readonly p95: number;
}

/** How long a record takes until a window has painted it, with the desk at one of its screens. */
interface PlaceBench {
  readonly place: "station" | "day";
  /** From before the desk's page sends the record until its answer, which goes out after the commit. */
  readonly answered: Spread;
  /** From before the record is sent until the new picture is painted: by the desk, the board, and the later of the two. */
  readonly desk: Spread;
  readonly board: Spread;
  readonly both: Spread;
  /** From the answer until both have painted. */
  readonly afterAnswer: Spread;
}

export interface WindowsBench {
  readonly athletes: number;
  readonly records: number;
  readonly places: readonly PlaceBench[];
}

interface Timed {
  readonly sent: number;
  readonly answered: number;
  readonly desk: number;
  readonly board: number;
}

/** Each does each of two tests once: 200 records at each of the desk's places. */
const athletes = 200;

/**
 * The real app with both windows open and 200 athletes checked in: the desk's page sends 200 records one after
 * another, and each window says when it had painted what it then read. The clocks of the two pages are compared
 * through their time origins, which one machine gives to both.
 */
export function windowsBench(): Promise<WindowsBench> {
  return withBothWindows(async (desk, board, ids) => {
    const station = await benchAt("station", desk, board, ids);
    const day = await benchAt("day", desk, board, ids);
    return { athletes, records: ids.length, places: [station, day] };
  });
}

/** The real app with the desk and the board open on a day of its own; `ids` are the athletes'. Closed whatever comes. */
export function withBothWindows<Result>(
  work: (desk: Page, board: Page, ids: readonly number[]) => Promise<Result>,
): Promise<Result> {
  return withProgram(
    makeDay,
    ({ desk, board, day }) => work(desk, board, day),
    (result) => result,
  );
}

/** A program that runs on a day of its own. */
export interface Program<Day> {
  readonly app: ElectronApplication;
  readonly desk: Page;
  readonly board: Page;
  readonly day: Day;
}

/**
 * Runs the real app with both windows on the day that `make` wrote into a store's file, and lets `judge` look at that file
 * once the app has ended. Closed and deleted whatever comes.
 */
export async function withProgram<Day, Seen, Result>(
  make: (file: string) => Promise<Day>,
  work: (program: Program<Day>) => Promise<Seen>,
  judge: (seen: Seen, file: string, day: Day) => Result,
): Promise<Result> {
  const folder = await mkdtemp(join(tmpdir(), "tapeline-bench-"));
  const stage = await prepareStage();
  try {
    const file = join(folder, "tapeline.sqlite");
    const day = await make(file);
    const launched = await launchApp(stage, folder);
    let seen: Seen;
    try {
      const { app } = launched;
      const desk = await pageOf(app, "desk");
      await desk.evaluate(() =>
        (window as unknown as { bridge: { openBoard(): unknown } }).bridge.openBoard(),
      );
      seen = await work({ app, desk, board: await pageOf(app, "board"), day });
    } finally {
      await closeApp(launched);
    }
    return judge(seen, file, day);
  } finally {
    await stage.display.stop();
    await rm(folder, { recursive: true, force: true, maxRetries: 5 });
  }
}

/** Everybody checked in, two tests of each from the spring: enough for every record to be a best or not. */
async function makeDay(file: string): Promise<readonly number[]> {
  // All of them on the big screen, which is waited for at every record.
  const day = await boardDay(
    crowd(athletes).map((each) => (each.board === "hidden" ? { ...each, board: "bib" } : each)),
    file,
  );
  for (let bib = 1; bib <= athletes; bib += 1) {
    day.past(bib, "push-up", 20);
    day.past(bib, "agility", 100);
  }
  day.desk.close();
  return day.ids;
}

/** At its station the desk enters push-ups; at the overview of the day, both directions of the quadrant jump. */
async function benchAt(
  place: PlaceBench["place"],
  desk: Page,
  board: Page,
  ids: readonly number[],
): Promise<PlaceBench> {
  await desk.evaluate(
    (path) => {
      location.hash = path;
    },
    place === "station" ? "/station/push-up" : "/day",
  );
  await desk.waitForTimeout(1_000);
  await watchPaints(desk, "everything");
  await watchPaints(board, "tests done");
  const times: Timed[] = [];
  for (const [index, athleteId] of ids.entries()) {
    const entry = place === "station" ? pushUps(athleteId, index) : quadrants(athleteId, index);
    await Promise.all([armPaint(desk), armPaint(board)]);
    const call = await send(desk, entry);
    const [atDesk, atBoard] = await Promise.all([paintedAt(desk), paintedAt(board)]);
    times.push({ ...call, desk: atDesk, board: atBoard });
  }
  return summed(place, times);
}

export function pushUps(athleteId: number, index: number): object {
  const seen = { how: "tally", reps: 17 + (index % 9), offAtEnd: 0 };
  return { athleteId, test: "push-up", variant: "full", attempts: [{ id: randomUUID(), seen }] };
}

function quadrants(athleteId: number, index: number): object {
  const attempts = (["cw", "ccw"] as const).map((direction) => ({
    id: randomUUID(),
    seen: { direction, laps: 6, extra: index % 4, touches: 0 },
  }));
  return { athleteId, test: "agility", variant: "", attempts };
}

/** Sends one record from the desk's page; when it was sent and answered by the page's clock. */
export function send(desk: Page, entry: object): Promise<{ sent: number; answered: number }> {
  return desk.evaluate(
    async (body) => {
      const headers = { "content-type": "application/json" };
      const sent = performance.timeOrigin + performance.now();
      const response = await fetch("/trpc/station.enter", { method: "POST", headers, body });
      const answered = performance.timeOrigin + performance.now();
      if (response.status !== 200) throw new Error(await response.text());
      return { sent, answered };
    },
    JSON.stringify({ ...entry, by: "QA", sure: true }),
  );
}

function summed(place: PlaceBench["place"], times: readonly Timed[]): PlaceBench {
  const spread = (of: (time: Timed) => number): Spread => {
    const values = times.map(of);
    return { median: quantile(values, 0.5), p95: quantile(values, 0.95) };
  };
  const later = (time: Timed) => Math.max(time.desk, time.board);
  return {
    place,
    answered: spread(({ sent, answered }) => answered - sent),
    desk: spread(({ sent, desk }) => desk - sent),
    board: spread(({ sent, board }) => board - sent),
    both: spread((time) => later(time) - time.sent),
    afterAnswer: spread((time) => later(time) - time.answered),
  };
}
