import { expect, test } from "vitest";
import { variationsOf } from "../../electron/api/noise/errors.ts";
import { connectionOf } from "../store/connection.ts";
import { entry, reps, type StationDay, stationDay } from "./station-day.ts";

/** How SQLite goes about each query from now on, by its own account (`EXPLAIN QUERY PLAN`). */
function plansOf({ desk }: StationDay): ReadonlyMap<string, readonly string[]> {
  const connection = connectionOf(desk.store.db);
  const prepare = connection.prepare.bind(connection);
  const plans = new Map<string, readonly string[]>();
  Object.assign(connection, {
    prepare(sql: string) {
      const values = Object.fromEntries([...sql.matchAll(/@(\w+)/g)].map(([, name]) => [name, null]));
      const plan = prepare<unknown[], { detail: string }>(`EXPLAIN QUERY PLAN ${sql}`).all(values);
      plans.set(
        sql,
        plan.map(({ detail }) => detail),
      );
      return prepare(sql);
    },
  });
  return plans;
}

test("what stands in the place of an attempt is found by indexes, never through all attempts or marks of a season", async () => {
  const day = await stationDay();
  const first = entry(day.idOf(1), "push-up", reps(20));
  const { db } = day.desk.store;
  // Of other days it is read once what their marks vary by, and kept.
  variationsOf(db, day.dayId);
  const plans = plansOf(day);
  await day.station.enter(first);
  const attemptId = first.attempts[0]?.id ?? "";
  await day.station.standing({ test: "push-up", attemptId });
  const through = /^SCAN (?:attempt|mark|past_mark)\b(?!.*INDEX)|AUTOMATIC/;
  const slow = [...plans].filter(([, plan]) => plan.some((line) => through.test(line)));
  expect(slow).toEqual([]);
  expect([...plans.keys()].filter((sql) => sql.includes("RECURSIVE chain"))).toHaveLength(1);
  day.desk.close();
});
