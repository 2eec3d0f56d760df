import { consentOf } from "../../domain/privacy/consent.ts";
import { quarterOf, quasiOf } from "../../domain/privacy/quasi.ts";
import type { BundleKind, Candidate } from "../../domain/privacy/rule.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { allAthletes } from "../../store/tables/athletes.ts";
import type { Day } from "../../store/tables/days.ts";
import { marksOfDay } from "../../store/tables/marks.ts";
import { namelessMarks } from "../../store/tables/nameless.ts";

/**
 * Returns every mark that a day's bundle could report, with the facts about its athlete that the privacy rule needs.
 */
export function candidatesOf(db: ReadableDb, day: Day, kind: BundleKind): Candidate[] {
  // Nothing links the marks of an erased athlete, so a profile can't hold them.
  return kind === "marks" ? [...ofAthletes(db, day), ...ofErased(db, day)] : ofAthletes(db, day);
}

/**
 * Returns nameless marks of erased athletes, each as its own athlete: a day has at most one per person, test and
 * variant.
 */
function ofErased(db: ReadableDb, day: Day): Candidate[] {
  return namelessMarks(db, day.id).map(({ test, variant, value, ageBand, category }, index) => ({
    ...{ athlete: -1 - index, league: -1 - index, test, variant, ageBand, category },
    ...{ leagueSize: "unknown", quarter: quarterOf(day.date), consent: "given" },
    mark: { state: "complete", value },
  }));
}

function ofAthletes(db: ReadableDb, day: Day): Candidate[] {
  const athletes = allAthletes(db);
  const byId = new Map(athletes.map((athlete) => [athlete.id, athlete]));
  const leagues = Map.groupBy(athletes, ({ leagueId }) => leagueId);
  return marksOfDay(db, day.id).flatMap(({ athleteId, test, variant, mark }) => {
    const athlete = byId.get(athleteId);
    if (athlete === undefined) return [];
    const { leagueId, birthYear, category, board } = athlete;
    const hidden = board === "hidden";
    const described = { birthYear, category, leagueAthletes: leagues.get(leagueId)?.length ?? 0 };
    const quasi = quasiOf(described, variant, day.date);
    return [
      {
        ...{ athlete: athleteId, league: leagueId, hidden, test, mark },
        ...{ consent: consentOf(athlete, day.openedOn ?? day.date), ...quasi },
      },
    ];
  });
}
