import type { LengthUnit } from "../../domain/tests/protocol.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { everybodyInPublic } from "../../store/reads/present.ts";
import { calls } from "../../store/tables/calls.ts";
import { allDays, type Day, dayAtHand } from "../../store/tables/days.ts";
import { tellMarks } from "../marks/marks.ts";
import { typicalErrorsOf } from "../noise/errors.ts";
import type { Board } from "./schemas.ts";
import { shapeBoard } from "./shape.ts";

/** Returns the big screen of a day at this moment; an empty one without a day. */
export function boardOf(
  db: ReadableDb,
  day: Day | null,
  lengths: LengthUnit,
): Omit<Board, "demo" | "hidden"> {
  const errors = typicalErrorsOf(db);
  if (day === null)
    return { day: null, ...shapeBoard({ people: [], marks: [], calls: [], errors, lengths }) };
  const { title, date, state } = day;
  const facts = {
    people: everybodyInPublic(db, day.id),
    marks: tellMarks(db, day, null, errors),
    calls: calls(db, day.id),
    errors,
    lengths,
  };
  return { day: { title, date, state }, ...shapeBoard(facts) };
}

/** Returns the day being prepared or held; once today's is closed, it stays on the screen until midnight. */
export function dayOnTheWall(db: ReadableDb, today: string): Day | null {
  return dayAtHand(db) ?? allDays(db).find(({ date }) => date === today) ?? null;
}
