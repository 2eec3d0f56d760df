import { consentOf } from "../../domain/privacy/consent.ts";
import { quasiOf } from "../../domain/privacy/quasi.ts";
import type { Candidate } from "../../domain/privacy/rule.ts";
import { athleteById } from "../../store/athletes.ts";
import type { Database } from "../../store/database.ts";
import type { Day } from "../../store/days.ts";
import { marksOfDay } from "../../store/marks.ts";

/** Every mark of a day with what the privacy rule needs to know of its athlete, and nothing more. */
export function candidatesOf(db: Database, day: Day): Candidate[] {
  return marksOfDay(db, day.id).flatMap(({ athleteId, test, variant, mark }) => {
    const athlete = athleteById(db, athleteId);
    if (athlete === undefined) return [];
    const consent = consentOf(athlete, day.date);
    return [{ athlete: athleteId, test, mark, consent, ...quasiOf(athlete, variant, day.date) }];
  });
}
