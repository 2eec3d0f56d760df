import { loadavg } from "node:os";
import type { Seed } from "../../electron/domain/chance.ts";
import { beginning } from "../../electron/domain/plan/floor.ts";
import { forecastOf } from "../../electron/domain/plan/forecast.ts";
import { finished } from "../../electron/domain/plan/progress.ts";
import { whatIfs } from "../../electron/domain/plan/what-ifs.ts";
import { arriving, usualHall } from "../checks/plan/halls.ts";

const seed: Seed = [20, 26, 11, 30];
const bars = { forecastMs: 300, changesMs: 5_000 };
const goes = 5;

/** Times a forecast and all changes with all pairs for 120 athletes, without and with few judges, on one core; as text. */
export function forecastSpeedLines(): string[] {
  const athletes = arriving(120);
  return [null, 6].map((judges) => {
    const hall = { ...usualHall(), judges };
    const forecast = medianMs(() => finished(forecastOf(beginning(hall, athletes), [], seed)));
    const changes = medianMs(() => finished(whatIfs(hall, athletes, { known: [], seed })));
    return (
      `${judges ?? "no limit of"} judges: a forecast of 200 days ${forecast.toFixed(0)} ms (${told(forecast, bars.forecastMs)}), ` +
      `all changes and pairs ${changes.toFixed(0)} ms (${told(changes, bars.changesMs)}); load ${loadavg()[0]?.toFixed(1)}`
    );
  });
}

function told(ms: number, bar: number): string {
  return ms <= bar ? "kept" : "NOT KEPT";
}

/** The first go is not counted: the engine makes its code fast in it. */
function medianMs(work: () => unknown): number {
  const times = Array.from({ length: goes + 1 }, () => {
    const began = performance.now();
    work();
    return performance.now() - began;
  });
  return times.slice(1).sort((a, b) => a - b)[Math.floor(goes / 2)] ?? 0;
}
