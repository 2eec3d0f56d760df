import { secondsAfter } from "../../domain/day/clock.ts";
import type { Athlete } from "../../domain/plan/hall.ts";
import { type LeagueSettings, type PlanSettings, usualLeague } from "../../domain/plan/settings.ts";
import { type TestCode, testCodes } from "../../domain/tests/registry.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { everybody, type Present } from "../../store/reads/present.ts";
import type { Day } from "../../store/tables/days.ts";
import { leftOut } from "../../store/tables/entrants.ts";

/** Returns everybody on the day's list who may still test. */
function listed(db: ReadableDb, day: Day): Present[] {
  return everybody(db, day.id).filter(({ state }) => state === "expected" || state === "testing");
}

/** A league as it is planned: its settings, or the usual ones, and how many of it are on the list. */
export interface PlannedLeague extends LeagueSettings {
  readonly listed: number;
}

/** Returns all leagues that are on the list or planned for, by name. */
export function leaguesOf(db: ReadableDb, day: Day, settings: PlanSettings): PlannedLeague[] {
  const counts = new Map<string, number>();
  for (const { league } of listed(db, day)) counts.set(league, (counts.get(league) ?? 0) + 1);
  const names = new Set([...counts.keys(), ...settings.leagues.map(({ league }) => league)]);
  return [...names]
    .map((name) => ({
      ...(settings.leagues.find(({ league }) => league === name) ?? usualLeague(name, settings.begins)),
      listed: counts.get(name) ?? 0,
    }))
    .sort((a, b) => a.league.localeCompare(b.league, "en"));
}

/** Returns the tests that each athlete has skipped. */
export function skippedBy(db: ReadableDb, day: Day): (athleteId: number) => ReadonlySet<TestCode> {
  const skipped = Map.groupBy(leftOut(db, day.id), ({ athleteId }) => athleteId);
  return (athleteId) => new Set((skipped.get(athleteId) ?? []).map(({ test }) => test));
}

/**
 * Returns those for whom a day is planned, league by league: who is on the list, fewer where fewer were said to come, and
 * where more were, people without a name under ids below zero.
 */
export function plannedAthletes(db: ReadableDb, day: Day, settings: PlanSettings): Athlete[] {
  const people = Map.groupBy(listed(db, day), ({ league }) => league);
  const skipped = skippedBy(db, day);
  let nameless = 0;
  return leaguesOf(db, day, settings).flatMap(({ league, number, from, until, comes }) => {
    const ids = (people.get(league) ?? []).map(({ athleteId }) => athleteId);
    const arrives = {
      from: secondsAfter(settings.begins, from),
      until: secondsAfter(settings.begins, until),
    };
    return Array.from({ length: number ?? ids.length }, (_, index): Athlete => {
      const id = ids[index];
      const left = id === undefined ? testCodes : testCodes.filter((test) => !skipped(id).has(test));
      if (id === undefined) nameless += 1;
      return { id: id ?? -nameless, league, arrives, comes, left, rested: 0 };
    });
  });
}
