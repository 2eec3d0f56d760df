import type { z } from "zod";
import type { LengthUnit } from "../../domain/tests/protocol.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { cachedUntilWrite } from "../../store/connection/until-write.ts";
import { everybodyInPublic } from "../../store/reads/present.ts";
import { calls } from "../../store/tables/calls.ts";
import { dayEvents } from "../../store/tables/day-events.ts";
import { allDays, type Day, dayAtHand, dayById } from "../../store/tables/days.ts";
import { heatsAtHand } from "../lanes/at-hand.ts";
import { tellMarks } from "../marks/marks.ts";
import { doubtedMarks, placeOfMark } from "../marks/unanswered.ts";
import { variationsOf } from "../noise/errors.ts";
import { dayBoardSchema } from "./schemas.ts";
import { shapeBoard } from "./shape.ts";

function boardOf(db: ReadableDb, day: Day | null, lengths: LengthUnit): z.infer<typeof dayBoardSchema> {
  const variations = variationsOf(db, day?.id ?? 0);
  if (day === null)
    return {
      day: null,
      ...shapeBoard({ people: [], marks: [], calls: [], heats: [], doubted: new Set(), variations, lengths }),
    };
  const { title, date, state } = day;
  const marks = tellMarks(db, day);
  const facts = {
    people: everybodyInPublic(db, day.id),
    marks,
    calls: calls(db, day.id),
    heats: day.state === "open" ? heatsAtHand(db, day) : [],
    doubted: new Set(doubtedMarks(db, day, () => marks).map(({ mark }) => placeOfMark(mark))),
    variations,
    lengths,
  };
  return { day: { title, date, state }, ...shapeBoard(facts) };
}

/** What every big screen of a hall is told until something changes, held to the schema once for all of them. */
const told = {
  cm: cachedUntilWrite((db, dayId: number) => toldOf(db, dayId, "cm")),
  in: cachedUntilWrite((db, dayId: number) => toldOf(db, dayId, "in")),
};

function toldOf(db: ReadableDb, dayId: number, lengths: LengthUnit) {
  return dayBoardSchema.parse(boardOf(db, dayById(db, dayId) ?? null, lengths));
}

/** Returns the big screen of a day at this moment; an empty one without a day. */
export function toldOnBoard(
  db: ReadableDb,
  day: Day | null,
  lengths: LengthUnit,
): z.infer<typeof dayBoardSchema> {
  return told[lengths](db, day?.id ?? 0);
}

/**
 * Returns the open day; or the one that was closed today, whatever its own date: the hall sees its closing picture
 * until midnight, also while the next day is being planned; or the planned one.
 */
export function dayOnTheWall(db: ReadableDb, today: string): Day | null {
  const atHand = dayAtHand(db);
  if (atHand !== undefined && (atHand.state === "open" || atHand.date === today)) return atHand;
  return allDays(db).find((day) => isClosedOn(db, day, today)) ?? atHand ?? null;
}

function isClosedOn(db: ReadableDb, { id, date, state }: Day, today: string): boolean {
  if (state !== "closed") return false;
  // Of days from before their history was kept, only the own date is known.
  return (dayEvents(db, id).at(-1)?.on ?? date) === today;
}
