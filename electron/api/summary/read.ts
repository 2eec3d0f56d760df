import { clockOf } from "../../domain/heats/fold.ts";
import { type LaneTime, partOf, type SummaryDay } from "../../domain/summary/day.ts";
import { workIn } from "../../domain/summary/lanes.ts";
import { type Rooted, rootedAttempts } from "../../domain/summary/roots.ts";
import { movedTogether, type Together } from "../../domain/summary/together.ts";
import { type TurnTime, turnTimes } from "../../domain/summary/turns.ts";
import { testCodes } from "../../domain/tests/registry.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { everybody } from "../../store/reads/present.ts";
import { attemptsOfDay } from "../../store/tables/attempts.ts";
import type { Day } from "../../store/tables/days.ts";
import { leftOut } from "../../store/tables/entrants.ts";
import { endedHeats, type Heat } from "../../store/tables/heats.ts";
import { lanesAt, load } from "../lanes/load.ts";
import { tellMarks } from "../marks/marks.ts";

/** A day, or a league's part of it, as input of the summary. */
export interface ReadDay {
  readonly part: SummaryDay;
  /** Everybody's day: a league's change is told beside that of the others. */
  readonly whole: SummaryDay;
  /** Turns of the whole day: everybody's turn ends the time of the one before. */
  readonly turns: readonly TurnTime[];
  /** The part's standing attempts, each with the first of its chain, whoever's that was. */
  readonly standing: readonly Rooted[];
  /** The tests in which everybody of the whole day moved together. */
  readonly together: readonly Together[];
}

/** Reads everything entered on a day. @param league its name; null for the whole day */
export function readDay(db: ReadableDb, day: Day, league: string | null): ReadDay {
  const whole: SummaryDay = {
    state: day.state,
    people: everybody(db, day.id),
    marks: tellMarks(db, day),
    attempts: attemptsOfDay(db, day.id),
    leftOut: leftOut(db, day.id),
    laneTimes: laneTimesOf(db, day),
  };
  const own = whole.people.filter((who) => league === null || who.league === league);
  const athletes = new Set(own.map(({ athleteId }) => athleteId));
  return {
    part: league === null ? whole : partOf(whole, athletes),
    whole,
    turns: turnTimes(whole),
    standing: rootedAttempts(whole.attempts).filter(({ attempt }) => athletes.has(attempt.athleteId)),
    together: movedTogether(whole.marks),
  };
}

/** More heats than any day has. */
const allOfThem = 10_000;

function laneTimesOf(db: ReadableDb, day: Day): LaneTime[] {
  return testCodes
    .flatMap((test) => endedHeats(db, day.id, test, allOfThem))
    .filter(({ ended }) => ended?.ending === "done")
    .flatMap((heat) => laneTimesIn(db, heat));
}

/** Returns the times of lanes that did the whole test in this heat. */
function laneTimesIn(db: ReadableDb, heat: Heat): LaneTime[] {
  const loaded = load(db, heat);
  return lanesAt(loaded, null).flatMap((folded) => {
    const lane = loaded.lanes.find((each) => each.lane === folded.lane);
    // The athlete's attempts elsewhere today are not in this lane's time, so it would be too short.
    if (lane === undefined || lane.prior.length > 0) return [];
    const ms = workIn(clockOf(heat.test), folded, loaded.events);
    return ms === null ? [] : [{ athleteId: lane.athleteId, test: heat.test, ms }];
  });
}
