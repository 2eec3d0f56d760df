import type { MadeMark } from "../../domain/marks/otherwise.ts";
import type { Mark } from "../../domain/tests/protocol.ts";
import { allRows, firstRow, type ReadableDb } from "../connection/database.ts";
import type { Day } from "../tables/days.ts";
import { howMadeColumns, type KeptMark, withMade } from "../tables/marks.ts";

/** A comparable mark from an earlier day or an imported past result. */
export interface EarlierMark {
  readonly athleteId: number;
  readonly fingerprint: string;
  readonly date: string;
  readonly value: number;
  readonly made: MadeMark;
}

const isBefore = "(day.date < @date OR (day.date = @date AND day.id < @dayId))";

/** Complete marks of earlier days and of imported past results; `whose`: of these athletes, and only such marks. */
const earlierSql = (whose: { readonly marks: string; readonly past: string }) => `
  SELECT mark.athlete_id AS athleteId, fingerprint, day.date AS date, value, day.id AS dayId, ${howMadeColumns}
  FROM mark JOIN day ON day.id = mark.day_id
  WHERE ${whose.marks} AND mark.state = 'complete' AND ${isBefore}
  UNION ALL
  SELECT athlete_id, fingerprint, date, value, 0, NULL, NULL, NULL FROM past_mark WHERE ${whose.past} AND date < @date
  ORDER BY date, dayId`;
const ofSeries =
  "athlete_id = @athleteId AND test = @test AND variant = @variant AND fingerprint = @fingerprint";
const entrantsOnly = "athlete_id IN (SELECT athlete_id FROM entrant WHERE day_id = @dayId)";
const earlierOfAll = earlierSql({ marks: entrantsOnly, past: entrantsOnly });
const earlierOfSeries = earlierSql({
  marks: ofSeries,
  past: "athlete_id = @athleteId AND fingerprint = @fingerprint",
});

type EarlierRow = Omit<EarlierMark, "made"> & MadeMark;

/**
 * Returns the complete marks of all entrants before a day, oldest first. Past results of the same date do not count as
 * earlier.
 */
export function earlierMarks(db: ReadableDb, day: Day): EarlierMark[] {
  return allRows<EarlierRow>(db, earlierOfAll, { date: day.date, dayId: day.id }).map(withMade);
}

/** One athlete's marks that compare with each other. */
export type Series = Pick<KeptMark, "athleteId" | "test" | "variant" | "fingerprint">;

function valuesOf({ id: dayId, date }: Day, { athleteId, test, variant, fingerprint: name }: Series) {
  return { date, dayId, athleteId, test, variant, fingerprint: name };
}

/** Returns the complete marks of one series before a day, as {@link earlierMarks} does. */
export function earlierOf(db: ReadableDb, day: Day, series: Series): EarlierMark[] {
  return allRows<EarlierRow>(db, earlierOfSeries, valuesOf(day, series)).map(withMade);
}

/** The mark of an earlier day on which somebody stopped before the end. */
export interface StoppedMark extends Pick<EarlierMark, "athleteId" | "fingerprint" | "date"> {
  readonly mark: Mark;
}

const stoppedSql = `
  SELECT athlete_id AS athleteId, fingerprint, day.date AS date, detail FROM mark JOIN day ON day.id = mark.day_id
  WHERE ${ofSeries} AND mark.state = 'unfinished' AND ${isBefore}
  ORDER BY date DESC, day.id DESC LIMIT 1`;

/** Returns the newest unfinished mark of one series before a day; undefined for none. */
export function lastStopped(db: ReadableDb, day: Day, series: Series): StoppedMark | undefined {
  type Row = Omit<StoppedMark, "mark"> & { readonly detail: string };
  const row = firstRow<Row>(db, stoppedSql, valuesOf(day, series));
  if (row === undefined) return undefined;
  const { detail, ...rest } = row;
  return { ...rest, mark: JSON.parse(detail) as Mark };
}
