import { expect, test } from "vitest";
import { variationsOf } from "../../electron/api/noise/errors.ts";
import { type Earlier, fillEarlier } from "../bench/earlier-days.ts";
import { connectionOf } from "../store/connection.ts";
import { type BoardDay, boardDay } from "./board-day.ts";
import { crowd } from "./crowd.ts";
import { entry, past, reps, type StationDay, stationDay } from "./station-day.ts";

/** What a statement did since it was first asked: how often it ran, and how many rows it gave. */
interface Ran {
  readonly times: number;
  readonly rows: number;
}

/** Counts from now on how often each statement runs that was not asked before, and what it gives. */
function counting({ desk }: Pick<StationDay, "desk">): ReadonlyMap<string, Ran> {
  const connection = connectionOf(desk.store.db);
  const prepare = connection.prepare.bind(connection);
  const ran = new Map<string, Ran>();
  Object.assign(connection, {
    prepare(sql: string) {
      const statement = prepare<unknown[], unknown>(sql);
      const noted =
        <Answer>(work: (...values: unknown[]) => Answer, rowsIn: (answer: Answer) => number) =>
        (...values: unknown[]) => {
          const answer = work(...values);
          const { times, rows } = ran.get(sql) ?? { times: 0, rows: 0 };
          ran.set(sql, { times: times + 1, rows: rows + rowsIn(answer) });
          return answer;
        };
      return Object.assign(statement, {
        all: noted(statement.all.bind(statement), (rows) => rows.length),
        get: noted(statement.get.bind(statement), (row) => (row === undefined ? 0 : 1)),
        run: noted(statement.run.bind(statement), ({ changes }) => changes),
      });
    },
  });
  return ran;
}

test("an entry asks once for what its athlete did before, and once whether other days' marks have changed", async () => {
  const day = await stationDay();
  past(day, 1, "push-up", 20, "2026-08-01", "full");
  const asked = counting(day);
  const answer = await day.station.enter(entry(day.idOf(1), "push-up", reps(22)));
  expect(answer).toMatchObject({ outcome: "saved", told: { news: { change: 2 } } });
  const count = (part: RegExp) => [...asked].find(([sql]) => part.test(sql))?.[1].times;
  expect(count(/FROM mark[^;]*past_mark/)).toBe(1);
  expect(count(/FROM touched/)).toBe(1);
  expect(day.faults).toEqual([]);
});

/** How SQLite finds rows of the tables that grow with a season, for one statement by its own account. */
function searchesOf(day: BoardDay, sql: string): string[] {
  const values = Object.fromEntries([...sql.matchAll(/@(\w+)/g)].map(([, name]) => [name, null]));
  const connection = connectionOf(day.desk.store.db);
  const plan = connection.prepare<unknown[], { detail: string }>(`EXPLAIN QUERY PLAN ${sql}`).all(values);
  return plan
    .map(({ detail }) => detail)
    .filter((line) => /^(?:SCAN|SEARCH) (?:attempt|mark|past_mark|entrant)\b/.test(line));
}

/** By these an entry may look: one attempt, one athlete's day, or one athlete's series. */
const narrow = [
  /^SEARCH attempt .*\((?:id|replaces)=\?/,
  /^SEARCH attempt .*\(athlete_id=\? AND day_id=\?/,
  /^SEARCH mark .*\(day_id=\? AND test=\? AND athlete_id=\?/,
  /^SEARCH mark .*\(athlete_id=\? AND test=\? AND variant=\?/,
  /^SEARCH past_mark .*\(athlete_id=\? AND fingerprint=\?/,
  /^SEARCH entrant .*\(day_id=\? AND athlete_id=\?/,
];

/** What one entry of somebody with so many results in each test before, by a whole hall, runs and reads. */
async function readByEntry(earlier: Earlier, people = 6) {
  const day = await boardDay(crowd(people));
  fillEarlier(day, earlier);
  // Of other days it is read once what their marks vary by, and kept.
  variationsOf(day.desk.store.db, day.dayId);
  const ran = counting(day);
  await day.as("station").station.enter(entry(day.ids[1] ?? 0, "core", { held: 96_000 }, { sure: true }));
  await day
    .as("station")
    .station.enter(entry(day.ids[1] ?? 0, "endurance", { finished: true, time: 371_000 }, { sure: true }));
  const all = [...ran];
  const isSeries = ([sql]: (typeof all)[number]) => sql.includes("past_mark");
  const rows = (some: typeof all) => some.reduce((sum, [, each]) => sum + each.rows, 0);
  const told = {
    statements: all.reduce((sum, [, { times }]) => sum + times, 0),
    rows: rows(all.filter((each) => !isSeries(each))),
    series: rows(all.filter(isSeries)),
  };
  const wide = all
    .flatMap(([sql]) => searchesOf(day, sql))
    .filter((line) => !narrow.some((way) => way.test(line)));
  day.desk.close();
  return { told, wide };
}

test("an entry runs the same statements and reads the same rows whatever lies behind, but for the results that it is compared with", async () => {
  const none = await readByEntry({ name: "none", days: 0, apart: 0 });
  expect(none.wide).toEqual([]);
  expect(none.told.series).toBe(0);
  // As many as the door takes today; a new one has to be worth it.
  expect(none.told.statements).toBeLessThanOrEqual(2 * 16);
  for (const days of [2, 9]) {
    const weekly = await readByEntry({ name: "weekly", days, apart: 7 });
    const sheets = await readByEntry({ name: "imported", days, apart: 7, imported: true });
    const leagues = await readByEntry({ name: "of other leagues", days: days + 4, apart: 7, own: days });
    const larger = await readByEntry({ name: "weekly", days, apart: 7 }, 40);
    for (const { told, wide } of [weekly, sheets, leagues, larger]) {
      expect(wide).toEqual([]);
      expect(told).toEqual({ ...none.told, series: 2 * days });
    }
  }
});
