import { type PlanSettings, type ToldFigures, usualSettings } from "../../domain/plan/settings.ts";
import type { WritableDb } from "../../store/connection/database.ts";
import { everybody } from "../../store/reads/present.ts";
import { keepPlan, keepTold } from "../../store/tables/day-plans.ts";
import type { Day } from "../../store/tables/days.ts";
import { clockOf, secondsLater } from "../door/calendar.ts";

/** Minutes after the beginning in which the demo's leagues come, one after the other; invented. */
const windows = [
  { from: 0, until: 60 },
  { from: 45, until: 120 },
  { from: 90, until: 170 },
];
/** The seed of the demo's plan. */
const seed = 2718;
/** What was told of the demo's day before it began; invented, as its day is. Seconds. */
const told: Omit<ToldFigures, "begins" | "athletes"> = {
  end: { from: 11_700, middle: 12_180, until: 13_020 },
  holdsUp: "vertical",
  waits: { mean: 380, longest: 1_500 },
};

/** Plans the demo's day as an organiser would have, the evening before it began at `begins` (ISO 8601). */
export function planDemo(db: WritableDb, day: Day, begins: string): void {
  const people = everybody(db, day.id);
  const settings = demoSettings([...new Set(people.map(({ league }) => league))].sort(), begins);
  keepPlan(db, day.id, { settings, seed, savedAt: begins });
  keepTold(db, day.id, { ...told, begins: settings.begins, athletes: people.length }, begins);
}

function demoSettings(leagues: readonly string[], begins: string): PlanSettings {
  const clock = (minute: number) => clockOf(secondsLater(begins, minute * 60));
  return {
    ...usualSettings(),
    begins: clock(0),
    leagues: leagues.map((league, index) => {
      const { from, until } = windows[index % windows.length] ?? { from: 0, until: 0 };
      return { league, number: null, from: clock(from), until: clock(until), comes: 0.9 };
    }),
  };
}
