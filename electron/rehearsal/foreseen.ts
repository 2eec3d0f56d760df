import type { Calculator } from "../api/door/calculate.ts";
import type { Desk } from "../api/door/desk.ts";
import { assumedHall } from "../api/plan/hall.ts";
import type { Athlete, Hall, Station } from "../domain/plan/hall.ts";
import { momentIn } from "../domain/plan/moment-in.ts";
import { usualSettings } from "../domain/plan/settings.ts";
import type { PlannedTurn } from "../domain/plan/told.ts";
import { testCodes } from "../domain/tests/registry.ts";
import { everybody } from "../store/reads/present.ts";
import { dayById } from "../store/tables/days.ts";
import { entrants, leftOut } from "../store/tables/entrants.ts";

/** The day's end as it is foreseen at some points of a simulated day, beside when that day ended. */
export interface Foreseen {
  /** When the simulated day ended, in seconds from its beginning. */
  readonly ends: number;
  readonly points: readonly ForeseenPoint[];
}

interface ForeseenPoint {
  /** Seconds from the beginning: the moment, and the span in which the end is foreseen. */
  readonly at: number;
  readonly from: number;
  readonly until: number;
}

/** The parts of a day after which its end is foreseen. */
const shares = [0.2, 0.4, 0.6, 0.8];
/** The simulated day's stations take a seventh longer than a forecast assumes: it has to find that out. */
const slower = 1.15;
/** Simulated days of the plan and of each forecast: fewer than a day's own, since a rehearsal is waited for. */
const fewDays = 50;
/** Seeds of the simulated day and of the forecasts, which know nothing of it. */
const [seedOfDay, seedOfForecasts] = [1859, 8128];

/**
 * Simulates a day of those who were checked in, all there from the beginning, and foresees its end at four points of it
 * with what a program knows then. Null where nobody tests, or where the desk works nothing out.
 */
export async function foreseen(desk: Desk, dayId: number): Promise<Foreseen | null> {
  const { calculator } = desk;
  const athletes = athletesOf(desk, dayId);
  const day = dayById(desk.store.db, dayId);
  if (calculator === null || day === undefined || athletes.length === 0) return null;
  const hall = assumedHall(usualSettings(), day);
  const turns = await simulated(calculator, slow(hall), athletes);
  const ends = Math.max(...turns.map(({ until }) => until));
  const points: ForeseenPoint[] = [];
  for (const share of shares) points.push(await foresee(calculator, { hall, athletes, turns }, share * ends));
  return { ends, points };
}

function athletesOf({ store: { db } }: Desk, dayId: number): Athlete[] {
  const leagues = new Map(everybody(db, dayId).map(({ athleteId, league }) => [athleteId, league]));
  const skipped = new Set(leftOut(db, dayId).map(({ athleteId, test }) => `${athleteId} ${test}`));
  return entrants(db, dayId)
    .filter(({ state }) => state === "testing")
    .map(({ athleteId: id }) => ({
      ...{ id, league: leagues.get(id) ?? "", comes: 1, rested: 0 },
      arrives: { from: 0, until: 0 },
      left: testCodes.filter((test) => !skipped.has(`${id} ${test}`)),
    }));
}

function slow(hall: Hall): Hall {
  const longer = ({ turn, ...station }: Station) => ({
    ...station,
    turn: { ...turn, median: turn.median * slower },
  });
  return { ...hall, stations: hall.stations.map(longer) };
}

async function simulated(
  calculator: Calculator,
  hall: Hall,
  athletes: readonly Athlete[],
): Promise<readonly PlannedTurn[]> {
  const task = { hall, athletes, known: [], seed: seedOfDay, days: fewDays };
  return (await calculator.begin<"plan">({ kind: "plan", ...task }, () => {}).outcome).turns;
}

interface Simulated {
  readonly hall: Hall;
  readonly athletes: readonly Athlete[];
  readonly turns: readonly PlannedTurn[];
}

async function foresee(
  calculator: Calculator,
  { hall, athletes, turns }: Simulated,
  at: number,
): Promise<ForeseenPoint> {
  const moment = momentIn(hall, athletes, turns, at);
  const task = { moment, known: [], seed: seedOfForecasts, days: fewDays };
  const { end } = await calculator.begin<"forecast">({ kind: "forecast", ...task }, () => {}).outcome;
  return { at, from: at + end.from, until: at + end.until };
}
