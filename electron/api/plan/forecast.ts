import type { Span } from "../../domain/plan/told.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { planOfDay } from "../../store/tables/day-plans.ts";
import type { Day } from "../../store/tables/days.ts";
import { requireDay } from "../door/at-hand.ts";
import { clockOnDay, secondsLater } from "../door/calendar.ts";
import { allow } from "../door/trpc.ts";
import { newestForecast } from "./forecaster.ts";

/**
 * Returns when the open day will end, as a span that holds 8 of 10 simulated days, with what holds it up, one change that
 * would help, and what was planned; null for a day that is not open. A newer one is made in the background, and the topic
 * `forecast` is announced then.
 */
export const forecast = allow("organiser").query(({ ctx: { desk } }) => {
  const { db } = desk.store;
  const day = requireDay(db);
  if (day.state !== "open") return null;
  const newest = newestForecast(desk, day);
  const told = newest?.forecast ?? null;
  return {
    /** working: the first one is on its way. none: nobody has a test left, or this desk foresees nothing. */
    state: told !== null ? "told" : newest === null && desk.calculator !== null ? "working" : "none",
    /** The moment of which it is. */
    at: newest?.at ?? null,
    end: newest === null || told === null ? null : instantsOf(told.end, newest.at),
    holdsUp: told?.holdsUp ?? null,
    suggestion: suggestionOf(told),
    planned: plannedEnd(db, day),
  } as const;
});

function instantsOf({ from, middle, until }: Span, zero: string) {
  const instant = (seconds: number) => secondsLater(zero, seconds);
  return { from: instant(from), middle: instant(middle), until: instant(until) };
}

type Told = NonNullable<ReturnType<typeof newestForecast>>["forecast"];

function suggestionOf(told: Told) {
  const [change] = told?.suggestion?.changes ?? [];
  if (told?.suggestion == null || change === undefined) return null;
  return { change, minutes: Math.round(told.suggestion.saved.middle / 60) };
}

/** What was told of the day's end before it began; null where no plan was worked out. */
function plannedEnd(db: ReadableDb, day: Day) {
  const told = planOfDay(db, day.id)?.told ?? null;
  return told === null ? null : instantsOf(told.end, clockOnDay(day, told.begins));
}
