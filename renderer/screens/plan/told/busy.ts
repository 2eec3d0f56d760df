import type { Break } from "../../../../electron/domain/plan/hall.ts";
import type { DayPlan, StationLoad } from "../../../../electron/domain/plan/told.ts";
import type { LoadFrame } from "../../../parts/plots/draw-load.ts";

/** Fewest minutes of a queue that are worth saying. */
const leastQueue = 10;

/** Returns the longest time in which somebody waits for a station, in seconds; null for none of ten minutes. */
export function queueTime({ step, waiting }: StationLoad): Break | null {
  let best: Break | null = null;
  let from = 0;
  for (const [index, count] of [...waiting, 0].entries()) {
    if (count >= 1) continue;
    const until = index * step;
    const seconds = until - from;
    if (seconds >= leastQueue * 60 && seconds > (best === null ? 0 : best.until - best.from)) {
      best = { from, until };
    }
    from = until + step;
  }
  return best;
}

/** Returns the most athletes who wait for a station at once. */
export function mostWaiting({ waiting }: Pick<StationLoad, "waiting">): number {
  return Math.round(Math.max(0, ...waiting));
}

/** Steps between times at the axis, in minutes. */
const tickSteps = [15, 30, 60, 120, 240];
const mostTicks = 9;

/** Returns what the pictures of all stations share. Times at the axis are round ones of the clock on which it `begins`. */
export function frameOf(plan: DayPlan, breaks: readonly Break[], begins: string): LoadFrame {
  const until = Math.max(60, Math.ceil((plan.end.until * 1.03) / 300) * 300);
  return {
    until,
    end: plan.end,
    breaks: breaks
      .filter(({ from }) => from < until)
      .map((each) => ({ from: Math.max(0, each.from), until: Math.min(each.until, until) })),
    mostWaiting: Math.max(1, ...plan.stations.flatMap(({ waiting }) => waiting)),
    ticks: ticksOf(until, new Date(begins)),
  };
}

function ticksOf(until: number, at: Date): number[] {
  const begins = at.getHours() * 60 + at.getMinutes();
  const minutes = until / 60;
  const step = tickSteps.find((each) => minutes / each <= mostTicks) ?? Math.ceil(minutes / mostTicks);
  const first = Math.ceil(begins / step) * step - begins;
  const count = Math.max(0, Math.floor((minutes - first) / step) + 1);
  return Array.from({ length: count }, (_none, index) => (first + index * step) * 60);
}
