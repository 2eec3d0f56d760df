import { startingTypicalErrors } from "../../domain/statistics/change.ts";
import { correctionsOf } from "../../domain/summary/corrections.ts";
import { countsOf, totalsOf } from "../../domain/summary/counts.ts";
import type { SummaryAttempt, SummaryMark, SummaryPerson } from "../../domain/summary/day.ts";
import { judgesOf } from "../../domain/summary/judges.ts";
import { leagueChangesOf } from "../../domain/summary/league-changes.ts";
import { missingRows } from "../../domain/summary/missing.ts";
import { rollOf } from "../../domain/summary/roll.ts";
import { stationsOf } from "../../domain/summary/turns.ts";
import { testCodes } from "../../domain/tests/registry.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { typicalErrorsOf, variationsOf } from "../noise/errors.ts";
import { type ReadDay, readDay } from "./read.ts";
import type { Chosen } from "./which.ts";

/**
 * Sums up a day, or a league's part of it. Values, changes and spreads of results are grains, times ms, instants ISO 8601.
 * Each correction has what was cancelled, and what was entered in its place (null where nothing was).
 */
export function summaryOf(db: ReadableDb, { day, league, leagues }: Chosen) {
  const read = readDay(db, day, league?.name ?? null);
  const { part, whole, turns, standing, together } = read;
  const roll = rollOf(part);
  const { id, date, title, state } = day;
  return {
    day: { id, date, title, state },
    leagues,
    league,
    totals: totalsOf(part, roll, whole, typicalErrorsOf(db, id)),
    tests: countsOf(part),
    together,
    rows: roll.map(({ who, tests }) => ({
      who: whoOf(who),
      tests: tests.map(({ test, marks, gap }) => ({ test, marks: marks.map(markOf), gap })),
    })),
    missing: missingRows(roll).map((each) => ({ ...each, who: whoOf(each.who), tests: [...each.tests] })),
    corrections: corrected(read),
    stations: stationsOf(part, turns),
    judges: judgesOf(part.marks, standing),
    changes: changesOf(db, read, id, league?.name ?? null),
    errors: errorsOf(db, id),
  };
}

/** Returns how each league changed, or one of them beside the others of the day. */
export function changesOf(db: ReadableDb, { whole }: ReadDay, dayId: number, league: string | null) {
  const all = leagueChangesOf(whole, variationsOf(db, dayId));
  return league === null ? all : all.filter((each) => each.league === league);
}

/** Returns the typical errors that judge every change of a day, beside those of a store without pairs. */
export function errorsOf(db: ReadableDb, dayId: number) {
  const errors = typicalErrorsOf(db, dayId);
  return testCodes.map((test) => {
    const { fixed, share, assumed, pairs } = errors[test];
    const { fixed: startingFixed, share: startingShare } = startingTypicalErrors[test];
    return { test, fixed, share, assumed, pairs, startingFixed, startingShare };
  });
}

function whoOf({ athleteId, name, number, bib, league, state }: SummaryPerson) {
  return { athleteId, name, number, bib, league, state };
}

function markOf({ variant, mark, news }: SummaryMark) {
  return { variant, mark, news };
}

function corrected({ part }: ReadDay) {
  const people = new Map(part.people.map((who) => [who.athleteId, who]));
  const view = (attempt: SummaryAttempt) => {
    const who = people.get(attempt.athleteId);
    if (who === undefined) return null;
    const { id, test, variant, seen, enteredBy, at, note, source, replaces } = attempt;
    const { athleteId, name, number, bib, league } = who;
    return {
      ...{ attemptId: id, who: { athleteId, name, number, bib, league }, test, variant, seen, by: enteredBy },
      ...{ at, note, source, void: attempt.void, replaces },
    };
  };
  return correctionsOf(part).flatMap(({ attempt, instead }) => {
    const shown = view(attempt);
    return shown === null ? [] : [{ attempt: shown, instead: instead === null ? null : view(instead) }];
  });
}
