import { type TestCode, testCodes } from "../tests/registry.ts";
import type { LaneTime, SummaryAttempt, SummaryDay } from "./day.ts";
import { type Rooted, rootedAttempts } from "./roots.ts";
import { type Spread, spreadOf } from "./spread.ts";

/** Longest time between two turns: 20 min (ours, no source). A longer one is a pause, and not an athlete's. */
const pauseMs = 20 * 60_000;

/** One station's times per athlete, in ms. */
export interface StationTimes {
  readonly test: TestCode;
  /**
   * Working time: from the start of the clock to the athlete's last tap; where every lane has its own pace, from the
   * lane's first tap to its last. By the monotonic clock, from live heats only.
   */
  readonly atWork: Spread | null;
  /**
   * Share of the station's time: from the end of one turn to the end of the next, divided among the athletes of that
   * turn. By the wall time of entry, so it includes waiting and fetching, and late entries from paper blur it.
   */
  readonly perAthlete: Spread | null;
  /** Athletes of turns after a pause, or after the wall clock was set back: their share is unknown. */
  readonly leftOut: number;
  /** Athletes with results from sheets only, which say nothing about time. */
  readonly fromSheets: number;
}

/** One athlete's share of a station's time; null where it is unknown. */
export interface TurnTime {
  readonly athleteId: number;
  readonly test: TestCode;
  readonly ms: number | null;
}

/** Athletes measured together: one entered from paper, or all of a heat. */
interface Turn {
  readonly athletes: readonly number[];
  /** The last of their entries. */
  readonly end: SummaryAttempt;
}

/** Returns each athlete's share of each station's time, in the order of the tests and turns. What came from paper is left out. */
export function turnTimes({ attempts }: SummaryDay): TurnTime[] {
  const entered = rootedAttempts(attempts).filter(({ root }) => root.performed === root.at);
  return testCodes.flatMap((test) => {
    const turns = turnsOf(entered.filter(({ attempt }) => attempt.test === test));
    return turns.flatMap(({ athletes, end }, index) => {
      const before = turns[index - 1]?.end;
      const gap = before === undefined ? null : Date.parse(end.at) - Date.parse(before.at);
      const known = gap !== null && gap >= 0 && gap <= pauseMs;
      return athletes.map((athleteId) => ({ athleteId, test, ms: known ? gap / athletes.length : null }));
    });
  });
}

/** Returns turns by the time of their end. */
function turnsOf(entered: readonly Rooted[]): Turn[] {
  const last = new Map<number, SummaryAttempt>();
  for (const { attempt, root } of entered) {
    const known = last.get(attempt.athleteId);
    if (known === undefined || root.seq > known.seq) last.set(attempt.athleteId, root);
  }
  const together = Map.groupBy(last, ([athleteId, root]) => root.heatId ?? athleteId);
  return [...together.values()]
    .map((some) => ({
      athletes: some.map(([athleteId]) => athleteId),
      end: some.map(([, root]) => root).reduce((a, b) => (b.seq > a.seq ? b : a)),
    }))
    .sort((a, b) => a.end.seq - b.end.seq);
}

/**
 * Returns the times of the five stations for some athletes.
 * @param turns of the whole day, since everybody's turn ends the time of the one before
 * @param part the athletes' part of the day
 */
export function stationsOf(part: SummaryDay, turns: readonly TurnTime[]): StationTimes[] {
  const athletes = new Set(part.people.map(({ athleteId }) => athleteId));
  const own = turns.filter(({ athleteId }) => athletes.has(athleteId));
  return testCodes.map((test) => {
    const here = own.filter((turn) => turn.test === test);
    const timed = new Set(here.map(({ athleteId }) => athleteId));
    const measured = new Set(
      part.attempts
        .filter((each) => each.test === test && each.void === null)
        .map(({ athleteId }) => athleteId),
    );
    return {
      test,
      atWork: spreadOf(workOf(part.laneTimes, test)),
      perAthlete: spreadOf(here.flatMap(({ ms }) => ms ?? [])),
      leftOut: here.filter(({ ms }) => ms === null).length,
      fromSheets: [...measured].filter((athleteId) => !timed.has(athleteId)).length,
    };
  });
}

function workOf(times: readonly LaneTime[], test: TestCode): number[] {
  return times.filter((time) => time.test === test).map(({ ms }) => ms);
}
