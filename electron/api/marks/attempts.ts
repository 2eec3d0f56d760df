import type { LengthUnit } from "../../domain/tests/protocol.ts";
import type { TestCode } from "../../domain/tests/registry.ts";
import { writeMark } from "../../domain/tests/written.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import type { Present } from "../../store/reads/present.ts";
import type { KeptAttempt } from "../../store/tables/attempts.ts";
import type { Day } from "../../store/tables/days.ts";
import type { AttemptView, StationPerson, Told } from "../door/shapes.ts";
import { type MarkWithNews, tellMarks } from "./marks.ts";

/** Formats a mark for a station, lengths in cm or in. */
export function toldOf(mark: MarkWithNews, lengths: LengthUnit): Told {
  const { variant, news, beside } = mark;
  const written = writeMark(mark.test, mark.mark, lengths);
  return { variant, mark: mark.mark, written, news, beside: [...beside] };
}

/** Returns an athlete's mark of one variant today with its news; null without standing attempts. */
export function tellOne(
  db: ReadableDb,
  day: Day,
  which: { readonly athleteId: number; readonly test: TestCode; readonly variant: string },
  lengths: LengthUnit,
): Told | null {
  const marks = tellMarks(db, day, which.athleteId);
  const found = marks.find(({ test, variant }) => test === which.test && variant === which.variant);
  return found === undefined ? null : toldOf(found, lengths);
}

export function stationPersonOf(present: Present): StationPerson {
  const { athleteId, bib, name, number, league } = present;
  return { athleteId, bib, name, number, league };
}

/** Returns an entrant of a day in a station's form. */
export function personIn(people: ReadonlyMap<number, Present>, athleteId: number): StationPerson {
  const who = people.get(athleteId);
  // Attempts, marks, calls and lanes refer to entrants by a foreign key, so this can't happen.
  if (who === undefined) throw new Error(`Athlete ${athleteId} is not on the day's list.`);
  return stationPersonOf(who);
}

export function attemptView(attempt: KeptAttempt, who: StationPerson): AttemptView {
  const { id, test, variant, seen, enteredBy, at, note, source, replaces } = attempt;
  return {
    attemptId: id,
    who,
    test,
    variant,
    seen,
    by: enteredBy,
    at,
    note,
    source,
    void: attempt.void,
    replaces,
  };
}
