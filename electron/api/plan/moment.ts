import { secondsAfter } from "../../domain/day/clock.ts";
import type { Athlete, Break, Hall, Moment, Running } from "../../domain/plan/hall.ts";
import { type PlanSettings, usualLeague } from "../../domain/plan/settings.ts";
import type { Runner } from "../../domain/queue/queue.ts";
import { type TestCode, testCodes } from "../../domain/tests/registry.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { everybody, type Present } from "../../store/reads/present.ts";
import { calls } from "../../store/tables/calls.ts";
import type { Day } from "../../store/tables/days.ts";
import { liveHeats } from "../../store/tables/heats.ts";
import { clockOnDay } from "../door/calendar.ts";
import { type HeatAtHand, heatsAtHand } from "../lanes/at-hand.ts";
import { runnersOf } from "../station/runners.ts";
import { doneTurns, secondsFrom } from "./done.ts";
import { assumedHall } from "./hall.ts";
import { skippedBy } from "./people.ts";

/**
 * Returns an open day as it is at the instant `now` (ISO 8601), which is its second 0: who is here and rests or waits, which
 * heats run, who is still expected and when, and the turns done so far.
 */
export function momentOf(db: ReadableDb, day: Day, settings: PlanSettings, now: string): Moment {
  const nowMs = Date.parse(now);
  const begins = secondsFrom(nowMs, clockOnDay(day, settings.begins));
  const later = ({ from, until }: Break): Break => ({ from: from + begins, until: until + begins });
  const hall = assumedHall(settings, day);
  const runners = runnersOf(db, day, now);
  const heats = heatsAtHand(db, day);
  const running = [...heatsRunning(db, day, heats, nowMs), ...called(db, day, { heats, hall, nowMs })];
  const league = leagueOf(db, day);
  return {
    hall: {
      ...hall,
      breaks: hall.breaks.map(later),
      stations: hall.stations.map((station) => ({
        ...station,
        // Another place than planned is seen by its heat.
        places: Math.max(station.places, running.filter(({ test }) => test === station.test).length),
      })),
    },
    athletes: [
      ...runners.map((runner) => here(runner, league, hall.rest, nowMs)),
      ...expected(db, day, settings, later),
    ].filter(({ left }) => left.length > 0),
    running,
    done: doneTurns(db, day.id, now, now),
  };
}

function leagueOf(db: ReadableDb, day: Day): (athleteId: number) => string {
  const leagues = new Map(everybody(db, day.id).map(({ athleteId, league }) => [athleteId, league]));
  return (athleteId) => leagues.get(athleteId) ?? "";
}

function here(
  { athleteId, checkedIn, done, leftOut, lastDone, lastTimed = lastDone }: Runner,
  league: (athleteId: number) => string,
  rest: number,
  nowMs: number,
): Athlete {
  const since = secondsFrom(nowMs, checkedIn);
  const last = [...lastTimed.values()].sort().at(-1);
  return {
    id: athleteId,
    league: league(athleteId),
    arrives: { from: since, until: since },
    comes: 1,
    left: testCodes.filter((test) => !done.has(test) && !leftOut.has(test)),
    rested: last === undefined ? since : secondsFrom(nowMs, last) + rest,
  };
}

/** Somebody who will surely come is still not here: of those a simulator knows by a chance of less than 1. */
const almostSure = 0.99;

function expected(
  db: ReadableDb,
  day: Day,
  settings: PlanSettings,
  later: (window: Break) => Break,
): Athlete[] {
  const skipped = skippedBy(db, day);
  return everybody(db, day.id)
    .filter(({ state }) => state === "expected")
    .map(({ athleteId: id, league }: Present) => {
      const said = settings.leagues.find((each) => each.league === league);
      const { from, until, comes } = said ?? usualLeague(league, settings.begins);
      const clock = (at: string) => secondsAfter(settings.begins, at);
      return {
        ...{ id, league, comes: Math.min(comes, almostSure), rested: 0 },
        arrives: later({ from: clock(from), until: clock(until) }),
        left: testCodes.filter((test) => !skipped(id).has(test)),
      };
    });
}

function heatsRunning(db: ReadableDb, day: Day, heats: readonly HeatAtHand[], nowMs: number): Running[] {
  const running = heats.filter(({ state }) => state === "running");
  const zeros = new Map(liveHeats(db, day.id).map(({ id, zero }) => [id, zero?.wall]));
  return running.flatMap(({ heatId, test, athleteIds }) => {
    const zero = zeros.get(heatId);
    if (zero === undefined || athleteIds.length === 0) return [];
    return [{ test, athletes: athleteIds, since: Math.min(0, secondsFrom(nowMs, zero)) }];
  });
}

interface Seen {
  readonly heats: readonly HeatAtHand[];
  readonly hall: Hall;
  readonly nowMs: number;
}

/** Where results are typed, a call tells that somebody is at it: as many as the station has places and lanes for. */
function called(db: ReadableDb, day: Day, { heats, hall, nowMs }: Seen): Running[] {
  const live = new Set<TestCode>(heats.map(({ test }) => test));
  const running = heats.filter(({ state }) => state === "running");
  const held = new Set(running.flatMap(({ athleteIds }) => athleteIds));
  const byTest = Map.groupBy(
    calls(db, day.id).filter(({ test, athleteId }) => !live.has(test) && !held.has(athleteId)),
    ({ test }) => test,
  );
  return hall.stations.flatMap(({ test, places, lanes }) => {
    const some = (byTest.get(test) ?? []).slice(0, places * lanes);
    return Array.from({ length: Math.ceil(some.length / lanes) }, (_, place) => {
      const together = some.slice(place * lanes, (place + 1) * lanes);
      const since = Math.max(...together.map(({ at }) => secondsFrom(nowMs, at)));
      return { test, athletes: together.map(({ athleteId }) => athleteId), since: Math.min(0, since) };
    });
  });
}
