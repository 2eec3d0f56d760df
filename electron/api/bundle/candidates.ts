import { consentOf } from "../../domain/privacy/consent.ts";
import { quasiOf } from "../../domain/privacy/quasi.ts";
import type { Candidate } from "../../domain/privacy/rule.ts";
import { allAthletes } from "../../store/athletes.ts";
import type { Database } from "../../store/database.ts";
import type { Day } from "../../store/days.ts";
import { marksOfDay } from "../../store/marks.ts";

/** Every mark of a day with what the privacy rule needs to know of its athlete, and nothing more. */
export function candidatesOf(db: Database, day: Day): Candidate[] {
  const athletes = allAthletes(db);
  const byId = new Map(athletes.map((athlete) => [athlete.id, athlete]));
  const leagues = Map.groupBy(athletes, ({ leagueId }) => leagueId);
  return marksOfDay(db, day.id).flatMap(({ athleteId, test, variant, mark }) => {
    const athlete = byId.get(athleteId);
    if (athlete === undefined) return [];
    const { leagueId, birthYear, category } = athlete;
    const described = { birthYear, category, leagueAthletes: leagues.get(leagueId)?.length ?? 0 };
    const quasi = quasiOf(described, variant, day.date);
    return [
      { athlete: athleteId, league: leagueId, test, mark, consent: consentOf(athlete, day.date), ...quasi },
    ];
  });
}
