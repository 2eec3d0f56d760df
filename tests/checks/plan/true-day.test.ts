import { expect, test } from "vitest";
import { testCodes } from "../../../electron/domain/tests/registry.ts";
import { holdDay, type TrueDay } from "./true-day.ts";
import { type TrueHall, trueHall } from "./true-hall.ts";
import { momentOf } from "./true-moment.ts";

/** The halls that the planner is held against must be halls themselves. */
const halls = ["one", "two", "three", "four"].map((seed) => trueHall(seed));

test.each(halls)(
  "in the hall of $seed nobody is at two places, skips their rest or changes the order",
  (hall) => {
    const { turns, people } = holdDay(hall);
    for (const { id, tests } of people) {
      const own = turns.filter(({ athlete }) => athlete === id).sort((a, b) => a.since - b.since);
      expect(tests.filter((code) => own.some((turn) => turn.test === code))).toEqual(
        own.map((turn) => turn.test),
      );
      own.slice(1).forEach((turn, index) => {
        expect(turn.called).toBeGreaterThanOrEqual((own[index]?.end ?? 0) + hall.hall.rest);
      });
    }
  },
);

test.each(halls)(
  "in the hall of $seed no place holds two heats, no heat is too big, no judge is at two",
  (hall) => {
    const day = holdDay(hall);
    for (const { test: code, lanes } of hall.hall.stations) {
      const heats = [
        ...Map.groupBy(
          day.turns.filter((turn) => turn.test === code),
          ({ heat }) => heat,
        ).values(),
      ];
      for (const heat of heats) expect(heat.length).toBeLessThanOrEqual(lanes);
    }
    for (const { called } of day.turns) {
      expect(placesInUse(day, called)).toBeLessThanOrEqual(hall.hall.judges ?? Number.POSITIVE_INFINITY);
    }
  },
);

function placesInUse({ turns }: TrueDay, at: number): number {
  return new Set(turns.filter(({ called, end }) => called <= at && end > at).map(({ heat }) => heat)).size;
}

test("the same seed holds the same day, and one more place leaves everybody's turns as long as they were", () => {
  const [hall] = halls as [TrueHall];
  const day = holdDay(hall);
  expect(holdDay(hall)).toEqual(day);
  const stations = hall.hall.stations.map((station) => ({ ...station, places: station.places + 1 }));
  const more = holdDay(hall, { ...hall.hall, stations });
  expect(more.people.map(({ at }) => at)).toEqual(day.people.map(({ at }) => at));
  expect(more.turns.length).toBe(day.turns.length);
});

test.each(halls)("what is known in the hall of $seed at any moment tells nothing of what comes", (hall) => {
  const day = holdDay(hall);
  for (const part of [0, 0.2, 0.5, 0.8, 1]) {
    const moment = momentOf(hall, day, part * day.end);
    for (const { until, from } of moment.done) expect(Math.max(until, from ?? until)).toBeLessThanOrEqual(0);
    for (const { since } of moment.running) expect(since).toBeLessThanOrEqual(0);
    const running = moment.running.flatMap(({ athletes }) => athletes);
    expect(new Set(running).size).toBe(running.length);
    for (const { left } of moment.athletes)
      expect(testCodes.filter((code) => left.includes(code))).toEqual(left);
  }
});
