import { type Seed, seededChance } from "../chance.ts";
import type { DayState } from "./day-state.ts";
import { type Draws, draw, drawNormal, plainDraws } from "./draws.ts";
import { type Customs, floorOf } from "./floor.ts";
import type { Known, Moment, Spread } from "./hall.ts";
import { withKnown } from "./known.ts";
import { drawPace, paceOf } from "./pace.ts";
import type { Calculation } from "./progress.ts";
import { simulate } from "./simulate.ts";
import { withUnseen } from "./unseen.ts";

/** What happens in halls besides what a plan says: some come late, few leave early. Common practice, no source. */
export const usualCustoms: Customs = Object.freeze({ late: 0.1, lateBy: 900, leaves: 0.01 });

/** How long a heat that is not full waits for more, in seconds: some volunteers hardly do. Common practice, no source. */
const patience: Spread = { median: 60, sigma: 1 };
/** Seconds until a station stands for a while, on average, and how long it does: a judge is away, a tape comes off. Ours, no source. */
const betweenPauses = 10 * 3600;
const pause: Spread = { median: 480, sigma: 0.5 };
/** What a day's chance to come at all differs by, as standard deviation of the logarithm of its odds. Ours, no source. */
const attendanceSpread = 0.5;

/** The same moment on many days that chance makes different. */
export interface ManyDays {
  /** With the times that are known, and the turns under way that nobody has told. */
  readonly moment: Moment;
  readonly draws: readonly Draws[];
}

/**
 * Draws so many days: each has its own pace at every station, as uncertain as it is known, besides what varies from turn
 * to turn. The same seed gives the same days.
 */
export function* manyDays(
  moment: Moment,
  known: readonly Known[],
  seed: Seed,
  days: number,
): Calculation<ManyDays> {
  const { hall, beliefs } = withKnown(moment.hall, known);
  const pace = paceOf(moment, hall, beliefs);
  const random = seededChance(seed);
  const normal = () => drawNormal(random);
  const draws: Draws[] = [];
  for (let day = 0; day < days; day += 1) {
    const drawn = plainDraws(moment.athletes.length, hall.stations.length);
    draw(drawn, random);
    drawPace(pace, normal, drawn.pace);
    for (const station of hall.stations.keys()) {
      drawn.patience[station] = drawSpread(patience, normal);
      drawn.pauseFrom[station] = -betweenPauses * Math.log(1 - random());
      drawn.pauseFor[station] = drawSpread(pause, normal);
    }
    drawn.attendance = attendanceSpread * normal();
    draws.push(drawn);
    if (day % 10 === 9) yield (day + 1) / days;
  }
  return { moment: withUnseen({ ...moment, hall }), draws };
}

function drawSpread({ median, sigma }: Spread, normal: () => number): number {
  return median * Math.exp(sigma * normal());
}

/** Simulates each of the days and returns its end, in seconds from the moment. */
export function endsOf(moment: Moment, draws: readonly Draws[]): Calculation<number[]> {
  return eachDay(moment, draws, ({ end }) => end);
}

/** Simulates each of the days and returns what is read of it. */
export function* eachDay<Read>(
  moment: Moment,
  draws: readonly Draws[],
  read: (state: DayState) => Read,
): Calculation<Read[]> {
  const floor = floorOf(moment, usualCustoms);
  const days: Read[] = [];
  for (const day of draws) {
    days.push(read(simulate(floor, day)));
    if (days.length % 10 === 0) yield days.length / draws.length;
  }
  return days;
}
