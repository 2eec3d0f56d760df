import { assumedTimes } from "../../../electron/domain/plan/assumed.ts";
import { endsOf, manyDays } from "../../../electron/domain/plan/days.ts";
import type { Hall } from "../../../electron/domain/plan/hall.ts";
import { finished } from "../../../electron/domain/plan/progress.ts";
import { spanOf } from "../../../electron/domain/plan/span.ts";
import type { Span } from "../../../electron/domain/plan/told.ts";
import { holdDay, type TrueDay } from "./true-day.ts";
import { type TrueHall, trueHall } from "./true-hall.ts";
import { endAtPaceOf, momentOf } from "./true-moment.ts";

/** Parts of a day at which its end is forecast. */
export const parts = [0.2, 0.4, 0.6, 0.8] as const;

/** What a forecast told at one part of one hall's day, and what came. Seconds from that moment. */
export interface Forecasted {
  readonly part: number;
  readonly end: Span;
  readonly truth: number;
  /** The end at the pace of the last half hour; null where that told nothing. */
  readonly atPace: number | null;
}

/** Returns a hall of whose stations nothing but the assumptions is known. */
export function assumedHall(hall: Hall): Hall {
  const stations = hall.stations.map((station) => ({ ...station, ...assumedTimes[station.test] }));
  return { ...hall, stations };
}

/** Forecasts the ends of so many halls' days, from 1 on, each at all parts. */
export function forecasted(seed: string, halls: number, days = 200): Forecasted[] {
  return Array.from({ length: halls }, (_none, index) => index + 1).flatMap((number) => {
    const truth = trueHall(`${seed} ${number}`);
    const day = holdDay(truth);
    return parts.map((part) => forecastAt(truth, day, part, number, days));
  });
}

function forecastAt(truth: TrueHall, day: TrueDay, part: number, number: number, days: number): Forecasted {
  const at = part * day.end;
  const seen = momentOf(truth, day, at);
  // A hall's first day.
  const moment = { ...seen, hall: assumedHall(seen.hall) };
  // The span alone, as `forecastOf` makes it: what holds the day up costs as much again.
  const all = finished(manyDays(moment, [], [number, 1, 2, 3], days));
  const end = spanOf(finished(endsOf(all.moment, all.draws)));
  return { part, end, truth: day.end - at, atPace: endAtPaceOf(moment) };
}

/** What many forecasts come to. Minutes; a positive error is a day that was told to end later than it did. */
export interface Calibration {
  readonly halls: number;
  /** Share of halls whose true end lay in the span. */
  readonly held: number;
  readonly error: number;
  readonly absolute: number;
  readonly width: number;
  readonly atPace: { readonly told: number; readonly error: number; readonly absolute: number };
}

/** Returns how well forecasts were calibrated. */
export function calibrationOf(some: readonly Forecasted[]): Calibration {
  const errors = some.map(({ end, truth }) => (end.middle - truth) / 60);
  const paces = some.flatMap(({ atPace, truth }) => (atPace === null ? [] : [(atPace - truth) / 60]));
  return {
    halls: some.length,
    held: mean(some.map(({ end, truth }) => (truth >= end.from && truth <= end.until ? 1 : 0))),
    error: mean(errors),
    absolute: mean(errors.map(Math.abs)),
    width: mean(some.map(({ end }) => (end.until - end.from) / 60)),
    atPace: { told: paces.length, error: mean(paces), absolute: mean(paces.map(Math.abs)) },
  };
}

export function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
