import { Refusal } from "../../domain/refusal.ts";
import { type TestCode, testCodes } from "../../domain/tests/registry.ts";
import { sentence } from "../../domain/words.ts";
import { type SheetCell, writeSheet } from "../../sheets/write.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import type { Day } from "../../store/tables/days.ts";
import { requireDay } from "../door/at-hand.ts";
import { clockOf, clockOnDay, secondsLater } from "../door/calendar.ts";
import { allow } from "../door/trpc.ts";
import { type PlannedPerson, peopleOf } from "./work.ts";
import { type Work, worksOf } from "./works.ts";

const organiser = allow("organiser");

/**
 * One athlete's day as it is planned. Instants are ISO 8601.
 * @public declarations of the procedures name it
 */
export interface Line extends PlannedPerson {
  /** When they are to be there. */
  readonly at: string;
  /** When each test is to begin; those that are skipped are not in it, nor any of who stays away on the day that is shown. */
  readonly starts: readonly { readonly test: TestCode; readonly at: string }[];
}

/** Returns the timetable of the plan that was worked out last: waves, and each athlete's turns by league; null without one. */
export const timetable = organiser.query(({ ctx: { desk } }) => {
  const { db } = desk.store;
  const day = requireDay(db);
  const done = worksOf(desk.store).plan;
  return done?.outcome == null ? null : timetableOf(db, day, done.of, done.outcome);
});

/** The same as a sheet, for whoever calls the leagues. @throws Refusal `conflict` until a plan was worked out */
export const sheet = organiser.query(({ ctx: { desk } }) => {
  const { db } = desk.store;
  const day = requireDay(db);
  const done = worksOf(desk.store).plan;
  if (done?.outcome == null) throw new Refusal("conflict", sentence("plan.notWorkedOut"));
  const { leagues } = timetableOf(db, day, done.of, done.outcome);
  const columns = ["league", "number", "name", "bib", "arrive", ...testCodes];
  const rows = leagues.flatMap(({ lines }) => lines.map(cellsOf));
  const demo = desk.kind === "demo" ? "demo-" : "";
  return {
    name: `tapeline-timetable-${demo}${day.date}.csv`,
    text: writeSheet(columns, rows, { forSpreadsheets: true }),
  };
});

function cellsOf({ league, number, name, bib, at, starts }: Line): SheetCell[] {
  const startOf = (test: TestCode) => starts.find((start) => start.test === test)?.at;
  const times = [at, ...testCodes.map(startOf)];
  return [league, number, name, bib, ...times.map((time) => (time === undefined ? null : clockOf(time)))];
}

type Outcome = NonNullable<Work<"plan">["outcome"]>;

function timetableOf(db: ReadableDb, day: Day, of: Work<"plan">["of"], { waves, turns, end }: Outcome) {
  const begins = clockOnDay(day, of.begins);
  const instant = (seconds: number) => secondsLater(begins, seconds);
  const arrivals = new Map(waves.flatMap(({ athletes, at }) => athletes.map((id) => [id, at] as const)));
  const byAthlete = Map.groupBy(turns, ({ athlete }) => athlete);
  const lines = peopleOf(db, day, of).flatMap((who): Line[] => {
    const own = byAthlete.get(who.id) ?? [];
    const arrives = arrivals.get(who.id);
    // They may come all the same: whoever calls the leagues has them on the sheet, with the time to be there.
    if (own.length === 0) return arrives === undefined ? [] : [{ ...who, at: instant(arrives), starts: [] }];
    const starts = own
      .toSorted((a, b) => a.from - b.from)
      .map(({ test, from }) => ({ test, at: instant(from) }));
    const at = instant(arrives ?? Math.min(...own.map(({ from }) => from)));
    return [{ ...who, at, starts }];
  });
  return {
    date: day.date,
    title: day.title,
    begins,
    end: { from: instant(end.from), middle: instant(end.middle), until: instant(end.until) },
    waves: waves.map(({ league, athletes, at, firstStart, lastDone }) => ({
      league,
      athletes: athletes.length,
      at: instant(at),
      firstStart: instant(firstStart.middle),
      lastDone: instant(lastDone.middle),
    })),
    leagues: [...Map.groupBy(lines, ({ league }) => league)]
      .map(([league, some]) => ({ league, lines: some.toSorted(inOrder) }))
      .sort((a, b) => a.league.localeCompare(b.league, "en")),
  };
}

function inOrder(a: Line, b: Line): number {
  return a.at.localeCompare(b.at) || a.name.localeCompare(b.name, "en") || a.id - b.id;
}
