import { type Moment, msBetween } from "../../domain/heats/clock.ts";
import { type AnyLane, foldHeat } from "../../domain/heats/fold.ts";
import type { HeatEvent } from "../../domain/heats/heat.ts";
import { Refusal } from "../../domain/refusal.ts";
import type { Elapsed } from "../../domain/tests/live.ts";
import { sentence } from "../../domain/words.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { attemptsOfAthlete, type KeptAttempt } from "../../store/tables/attempts.ts";
import type { Day } from "../../store/tables/days.ts";
import { eventsOf, type KeptEvent } from "../../store/tables/heat-events.ts";
import { type HeatLane, lanesOf } from "../../store/tables/heat-lanes.ts";
import { type Heat, heatById } from "../../store/tables/heats.ts";
import { parametersOf } from "../../store/tables/marks.ts";
import { requireOpenDay } from "../door/at-hand.ts";
import type { Desk } from "../door/desk.ts";

/** An attempt that a heat entered for a lane's result. */
export interface MadeAttempt extends KeptAttempt {
  readonly result: string;
}

/** A lane with its athlete's attempts of the test. */
export interface LoadedLane extends HeatLane {
  /** Today's standing attempts from outside this heat. */
  readonly prior: readonly unknown[];
  /** This heat's attempts, standing or void, in the order of entry. */
  readonly made: readonly MadeAttempt[];
  /** The corrections of this heat's attempts by the same athlete, in the order of entry. */
  readonly corrections: readonly KeptAttempt[];
  /** Ids of attempts that another one corrects. */
  readonly corrected: ReadonlySet<string>;
}

/** A heat with all that decides its state. */
export interface LoadedHeat {
  readonly heat: Heat;
  readonly parameters: unknown;
  readonly lanes: readonly LoadedLane[];
  readonly events: readonly KeptEvent[];
}

/** Returns the current moment on the computer's clocks. */
export function momentOf(desk: Desk): Moment {
  return { ...desk.monotonic(), wall: desk.now().toISOString() };
}

/** Returns the ms since a heat's time 0; null before the start. */
export function elapsedOf(heat: Heat, now: Moment): Elapsed {
  return heat.zero === null ? null : msBetween(heat.zero, now).ms;
}

/** Returns a heat of the open day. @throws Refusal `not-found` when there is no such heat today. */
export function requireHeat(db: ReadableDb, heatId: string): { day: Day; heat: Heat } {
  const day = requireOpenDay(db);
  const heat = heatById(db, heatId);
  if (heat === undefined || heat.dayId !== day.id) throw new Refusal("not-found", sentence("heat.unknown"));
  return { day, heat };
}

/** @throws Refusal `conflict` when the heat has ended. */
export function requireLive(db: ReadableDb, heatId: string): { day: Day; heat: Heat } {
  const found = requireHeat(db, heatId);
  if (found.heat.state === "ended") throw new Refusal("conflict", sentence("heat.ended"));
  return found;
}

export function load(db: ReadableDb, heat: Heat): LoadedHeat {
  return {
    heat,
    parameters: parametersOf(db, heat.dayId, heat.test),
    lanes: lanesOf(db, heat.id).map((lane) => loadLane(db, heat, lane)),
    events: eventsOf(db, heat.id),
  };
}

function loadLane(db: ReadableDb, heat: Heat, lane: HeatLane): LoadedLane {
  const all = attemptsOfAthlete(db, heat.dayId, lane.athleteId).filter(({ test }) => test === heat.test);
  // A correction of the heat's own attempt belongs to the heat too: it replaces it, and is not counted twice.
  const own = all.filter(({ heatId }) => heatId === heat.id);
  const others = all.filter((each) => !own.includes(each) && each.void === null);
  return {
    ...lane,
    prior: others.filter(({ variant }) => variant === lane.variant).map(({ seen }) => seen),
    made: own.filter(isMade),
    corrections: own.filter((attempt) => !isMade(attempt)),
    corrected: new Set(all.flatMap(({ replaces }) => replaces ?? [])),
  };
}

function isMade(attempt: KeptAttempt): attempt is MadeAttempt {
  return attempt.result !== null;
}

/** Returns the state of a loaded heat's lanes, with given events instead of its own if any. */
export function lanesAt(loaded: LoadedHeat, elapsed: Elapsed, events?: readonly HeatEvent[]): AnyLane[] {
  const { heat, parameters, lanes } = loaded;
  // This test's own schemas parsed the parameters and the attempts; only the code is unknown here.
  return foldHeat(heat.test, parameters as never, lanes as never, events ?? loaded.events, elapsed);
}
