import { expect, test } from "vitest";
import { connectionOf } from "../store/connection.ts";
import { entry, past, reps, type StationDay, stationDay } from "./station-day.ts";

/** Counts from now on how often each query runs that was not asked before. */
function counting({ desk }: StationDay): ReadonlyMap<string, number> {
  const connection = connectionOf(desk.store.db);
  const prepare = connection.prepare.bind(connection);
  const asked = new Map<string, number>();
  Object.assign(connection, {
    prepare(sql: string) {
      const statement = prepare<unknown[], unknown>(sql);
      const all = statement.all.bind(statement);
      return Object.assign(statement, {
        all(...values: unknown[]) {
          asked.set(sql, (asked.get(sql) ?? 0) + 1);
          return all(...values);
        },
      });
    },
  });
  return asked;
}

test("an entry asks once for what its athlete did before, and once whether other days' marks have changed", async () => {
  const day = await stationDay();
  past(day, 1, "push-up", 20, "2026-08-01", "full");
  const asked = counting(day);
  const answer = await day.station.enter(entry(day.idOf(1), "push-up", reps(22)));
  expect(answer).toMatchObject({ outcome: "saved", told: { news: { change: 2 } } });
  const count = (part: RegExp) => [...asked].find(([sql]) => part.test(sql))?.[1];
  expect(count(/WITH who AS[^;]*past_mark/)).toBe(1);
  expect(count(/FROM touched/)).toBe(1);
  expect(day.faults).toEqual([]);
});
