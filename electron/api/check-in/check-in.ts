import { z } from "zod";
import { heldOn } from "../../domain/day/dates.ts";
import { athleteOfBadge } from "../../domain/people/badge-code.ts";
import type { Store } from "../../store/connection/store.ts";
import { athleteById, leagues } from "../../store/tables/athletes.ts";
import type { Day } from "../../store/tables/days.ts";
import {
  countStates,
  entrantStates,
  entrants,
  expectedByName,
  nextFreeBib,
} from "../../store/tables/entrants.ts";
import { requireDay, requireOpenDay } from "../door/at-hand.ts";
import { isoDate } from "../door/calendar.ts";
import { allow, router } from "../door/trpc.ts";
import { personOf, personSchema, requireAthlete } from "../people/person.ts";
import { findAthletes } from "../people/search.ts";
import { admitAthlete, hasAttempts, walkUpAthlete } from "./admission.ts";
import { admitExpected, markNoShow, undoLast, withdrawAthlete } from "./attendance.ts";
import { admitInput, athleteInput, undoInput, walkUpInput } from "./inputs.ts";

const table = allow("organiser", "check-in");
const admitted = z.object({
  athleteId: z.int(),
  name: z.string(),
  state: z.enum(["testing", "not-testing"]),
  bib: z.int().nullable(),
});

/** Returns ids of athletes who match a query; without one, those still expected, by name. */
function meant(store: Store, day: Day, query: string): number[] {
  if (query.trim() === "") return expectedByName(store.db, day.id);
  const list = entrants(store.db, day.id);
  const found = findAthletes(store, query, new Map(list.map((entrant) => [entrant.athleteId, entrant])));
  // The code of a badge means one person alone, even when it is somebody's name.
  const scanned = athleteOfBadge(query);
  if (scanned === null || athleteById(store.db, scanned) === undefined) return found;
  return [scanned, ...found.filter((id) => id !== scanned)];
}

/** The check-in table: who is here, with which bib, and with which consents. */
export const checkIn = router({
  /** Finds people by part of a name, number, league or bib; an empty query finds those still expected. */
  search: table
    .input(z.object({ query: z.string().max(200), limit: z.int().min(1).max(100).default(12) }))
    .output(z.object({ people: z.array(personSchema), more: z.int() }))
    .query(({ ctx: { desk }, input }) => {
      const { db } = desk.store;
      const day = requireDay(db);
      const ids = meant(desk.store, day, input.query);
      const people = ids
        .slice(0, input.limit)
        .map((id) => personOf(db, day, requireAthlete(db, id), isoDate(desk.now())));
      return { people, more: ids.length - people.length };
    }),

  /** Returns one person, the next free bib, and whether the check-in can still be undone. */
  person: table
    .input(athleteInput)
    .output(personSchema.extend({ freeBib: z.int(), measured: z.boolean() }))
    .query(({ ctx: { desk }, input }) => {
      const { db } = desk.store;
      const day = requireDay(db);
      const person = personOf(db, day, requireAthlete(db, input.athleteId), isoDate(desk.now()));
      const freeBib = nextFreeBib(db, day.id);
      return { ...person, freeBib, measured: hasAttempts(db, day, input.athleteId) };
    }),

  /** Checks somebody in with a bib, or as here and not testing; the same again changes nothing. */
  admit: table
    .input(admitInput)
    .output(admitted)
    .mutation(({ ctx: { desk }, input: { athleteId, ...given } }) =>
      desk.store.write(["people", "entrants", "calls"], (db) =>
        admitAthlete(db, requireOpenDay(db), athleteId, given, desk.now().toISOString()),
      ),
    ),

  /** Checks in somebody not on the list: known from another day, or new. */
  walkUp: table
    .input(walkUpInput)
    .output(admitted)
    .mutation(({ ctx: { desk }, input }) =>
      desk.store.write(["people", "entrants", "calls"], (db) => {
        const day = requireOpenDay(db);
        const athleteId = walkUpAthlete(db, input, heldOn(day, isoDate(desk.now())));
        return admitAthlete(db, day, athleteId, input, desk.now().toISOString());
      }),
    ),

  /** Marks an expected athlete as a no-show. */
  noShow: table
    .input(athleteInput)
    .mutation(({ ctx: { desk }, input }) =>
      desk.store.write(["entrants", "calls"], (db) =>
        markNoShow(db, requireOpenDay(db), input.athleteId, desk.now().toISOString()),
      ),
    ),

  /** Withdraws an athlete for today; attempts stay, and no reason is kept. */
  withdraw: table
    .input(athleteInput)
    .mutation(({ ctx: { desk }, input }) =>
      desk.store.write(["entrants", "calls"], (db) =>
        withdrawAthlete(db, requireOpenDay(db), input.athleteId, desk.now().toISOString()),
      ),
    ),

  /** Undoes the last step. */
  undo: table
    .input(undoInput)
    .output(z.object({ state: z.enum(entrantStates) }))
    .mutation(({ ctx: { desk }, input }) =>
      desk.store.write(["people", "entrants", "calls"], (db) => ({
        state: undoLast(db, requireOpenDay(db), input, desk.now().toISOString()),
      })),
    ),

  /** Counts entrants by state, and returns the next free bib. */
  counts: table
    .output(z.object({ states: z.record(z.enum(entrantStates), z.int()), freeBib: z.int() }))
    .query(({ ctx: { desk } }) => {
      const day = requireDay(desk.store.db);
      const list = entrants(desk.store.db, day.id);
      return { states: countStates(list), freeBib: nextFreeBib(desk.store.db, day.id) };
    }),

  /** Returns the known leagues, for walk-ups. */
  leagues: table
    .output(z.array(z.object({ id: z.int(), name: z.string() })))
    .query(({ ctx: { desk } }) => leagues(desk.store.db)),

  /** Checks everybody in at once, for rehearsals; `askGuardian` names those without a guardian's consent. */
  admitAll: allow("organiser").mutation(({ ctx: { desk } }) =>
    desk.store.write(["entrants"], (db) => admitExpected(db, requireOpenDay(db), desk.now().toISOString())),
  ),
});
