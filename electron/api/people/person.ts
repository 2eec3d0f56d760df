import { z } from "zod";
import { heldOn } from "../../domain/day/dates.ts";
import { mayBeUnder18 } from "../../domain/people/age.ts";
import { Refusal } from "../../domain/refusal.ts";
import { testCodes } from "../../domain/tests/registry.ts";
import { sentence } from "../../domain/words.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { type Athlete, athleteById } from "../../store/tables/athletes.ts";
import type { Day } from "../../store/tables/days.ts";
import { entrantOf, entrantStates, leftOutOf } from "../../store/tables/entrants.ts";

/** A person in the form of the check-in table and the athletes' pages; `state` is null off the list. */
export const personSchema = z.object({
  athleteId: z.int(),
  name: z.string(),
  number: z.string(),
  league: z.string(),
  birthYear: z.int().nullable(),
  category: z.enum(["women", "men", "open"]).nullable(),
  mayBeUnder18: z.boolean(),
  guardianConsent: z.boolean(),
  board: z.enum(["name", "bib", "hidden"]),
  share: z.boolean(),
  asked: z.boolean(),
  state: z.enum(entrantStates).nullable(),
  bib: z.int().nullable(),
  leftOut: z.array(z.enum(testCodes)),
});

export type Person = z.infer<typeof personSchema>;

/** @throws Refusal `not-found` when nobody has this id. */
export function requireAthlete(db: ReadableDb, athleteId: number): Athlete {
  const athlete = athleteById(db, athleteId);
  if (athlete === undefined) throw new Refusal("not-found", sentence("checkIn.unknown"));
  return athlete;
}

/** `today` (ISO 8601): whether somebody may be under 18 is asked of it where no day at hand says better; `day` null: there is none. */
export function personOf(db: ReadableDb, day: Day | null, athlete: Athlete, today: string): Person {
  const { id, leagueId: _, ...who } = athlete;
  const entrant = day === null ? undefined : entrantOf(db, day.id, id);
  return {
    ...who,
    athleteId: id,
    mayBeUnder18: mayBeUnder18(athlete.birthYear, day === null ? today : heldOn(day, today)),
    state: entrant?.state ?? null,
    bib: entrant?.bib ?? null,
    leftOut: day === null ? [] : leftOutOf(db, day.id, id).map(({ test }) => test),
  };
}
