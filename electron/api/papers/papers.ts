import { badgeCode } from "../../domain/people/badge-code.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { type Athlete, allAthletes } from "../../store/tables/athletes.ts";
import type { Day } from "../../store/tables/days.ts";
import { type Entrant, entrants, type LeftOut, leftOut } from "../../store/tables/entrants.ts";
import { requireDay } from "../door/at-hand.ts";
import { allow, router } from "../door/trpc.ts";

/** Papers to print before and during a day: record sheets, bibs and badges. */
export const papers = router({
  /** Returns everybody who tests or is expected on the day at hand, as far as paper may say it. */
  people: allow("organiser").query(({ ctx: { desk } }) => papersOf(desk.store.db, requireDay(desk.store.db))),
});

/** `people` are by bib; those without one after them, by league and name. */
function papersOf(db: ReadableDb, day: Day) {
  const people = peopleOf(db, day);
  const leagues = [...Map.groupBy(people, ({ leagueId }) => leagueId)].map(([id, of]) => ({
    ...{ id, name: of[0]?.league ?? "", count: of.length },
  }));
  return { people, leagues: leagues.sort((a, b) => a.name.localeCompare(b.name, "en")) };
}

function peopleOf(db: ReadableDb, day: Day) {
  const listed = new Map(entrants(db, day.id).map((entrant) => [entrant.athleteId, entrant]));
  const skipped = Map.groupBy(leftOut(db, day.id), ({ athleteId }) => athleteId);
  const people = allAthletes(db).flatMap((athlete) => {
    const entrant = listed.get(athlete.id);
    return entrant === undefined ? [] : personOf(athlete, entrant, skipped.get(athlete.id) ?? []);
  });
  return people.sort(
    (a, b) => (a.bib ?? Number.POSITIVE_INFINITY) - (b.bib ?? Number.POSITIVE_INFINITY) || 0,
  );
}

/** Nobody where they neither test nor are expected. */
function personOf(athlete: Athlete, { state, bib }: Entrant, skipped: readonly LeftOut[]) {
  if (state !== "testing" && state !== "expected") return [];
  const { id, name, number, league, leagueId, board } = athlete;
  return [
    {
      ...{ athleteId: id, bib, number, league, leagueId, state },
      /** Only of somebody who agreed to be shown by name: papers lie about in the hall. */
      name: board === "name" ? name : null,
      /** What the barcode of their badge says: the bib, or without one a code that check-in knows. */
      code: bib === null ? badgeCode(id) : String(bib),
      /** Tests that they skip. */
      skips: skipped.map(({ test }) => test),
    },
  ];
}
