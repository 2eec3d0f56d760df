import { type Cycle, cyclesOf } from "./cycles.ts";
import { meanCycle } from "./expected.ts";
import type { Hall, Moment, Spread, Station } from "./hall.ts";
import type { Belief } from "./known.ts";
import { at } from "./numbers.ts";

/** What is known of today's pace: logarithms of how many times as long stations take, as a normal distribution. */
export interface Pace {
  readonly mean: Float64Array;
  /** Lower triangle whose product with itself is the covariance (Cholesky), row by row. */
  readonly root: Float64Array;
}

/** The standard deviation of what a day slows all its stations by, alike. Ours, no source. */
const hallWide = 0.1;
/** Seconds after which a turn of today counts for a third of a new one. Ours, no source. */
const memory = 75 * 60;
/** The variation of cycles that is assumed, as a share of their mean, and of how many cycles that is worth. Ours. */
const assumedVariation = 0.3;
const assumedCycles = 3;
/** A cycle counts for no more than so many times what was expected: more is a pause, or somebody was not there. Ours. */
const longest = 3;
/** How far a pace still wanders until the day is over, as standard deviation of its logarithm. Ours, no source. */
const wander = 0.05;

/**
 * Returns today's pace from today's turns: each station's own, and what is common to all of them. Who knows one station
 * slow expects the others slower, too. Normal prior and observations, one after another (Kalman 1960).
 * @param beliefs by station: what is believed of its pace before anything of today is seen
 */
export function paceOf(moment: Moment, hall: Hall, beliefs: readonly Belief[]): Pace {
  const count = hall.stations.length;
  const arrived = new Map(moment.athletes.map(({ id, arrives }) => [id, arrives.until]));
  const record = { hall, done: moment.done, arrived };
  // What is one heat and what are two is told better by times of today than by those before.
  const first = learnt(cyclesOf(record), hall, beliefs);
  const stations = hall.stations.map((station, index) => slower(station, Math.exp(at(first.mean, index))));
  const cycles = cyclesOf({ ...record, hall: { ...hall, stations } });
  const { mean, covariance } = learnt(cycles, hall, beliefs);
  for (let station = 0; station < count; station += 1) {
    covariance[station * count + station] = at(covariance, station * count + station) + wander ** 2;
  }
  return { mean, root: rootOf(covariance, count) };
}

function learnt(cycles: readonly Cycle[], hall: Hall, beliefs: readonly Belief[]) {
  const mean = Float64Array.from(beliefs, (belief) => belief.mean);
  const covariance = priorOf(beliefs.map(({ doubt }) => doubt));
  for (let station = 0; station < beliefs.length; station += 1) {
    const seen = seenAt(cycles, hall, station);
    if (seen !== null) learn(mean, covariance, station, seen);
  }
  return { mean, covariance };
}

function slower(station: Station, factor: number): Station {
  const times = (spread: Spread) => ({ ...spread, median: spread.median * factor });
  return { ...station, turn: times(station.turn), changeOver: times(station.changeOver) };
}

function priorOf(doubts: readonly number[]): Float64Array {
  const common = hallWide ** 2;
  return Float64Array.from(
    doubts.flatMap((doubt, row) =>
      doubts.map((_doubt, column) => common + (row === column ? doubt ** 2 : 0)),
    ),
  );
}

/** What a station's turns of today say of its pace. */
interface Seen {
  readonly logarithm: number;
  readonly variance: number;
}

/** A ratio of sums, since the mean is what a queue is served by, whatever the distribution; newer turns count for more. */
function seenAt(cycles: readonly Cycle[], hall: Hall, index: number): Seen | null {
  const station = hall.stations[index];
  const here = cycles.filter((cycle) => cycle.station === index);
  if (station === undefined || here.length === 0) return null;
  const weighed = here.map(({ athletes, took, until }) => ({
    ratio: Math.min(longest, took / meanCycle(station, athletes.length)),
    weight: Math.exp(until / memory) * meanCycle(station, athletes.length),
  }));
  const sum = weighed.reduce((all, { weight }) => all + weight, 0);
  const squares = weighed.reduce((all, { weight }) => all + weight ** 2, 0);
  const ratio = weighed.reduce((all, each) => all + each.weight * each.ratio, 0) / sum;
  const spread = weighed.reduce((all, each) => all + each.weight * (each.ratio - ratio) ** 2, 0) / sum;
  const effective = sum ** 2 / squares;
  const variation =
    (effective * (spread / ratio ** 2) + assumedCycles * assumedVariation ** 2) / (effective + assumedCycles);
  return { logarithm: Math.log(ratio), variance: variation / effective };
}

/** Takes one station's observation into the mean and the covariance of all. */
function learn(mean: Float64Array, covariance: Float64Array, station: number, seen: Seen): void {
  const count = mean.length;
  const column = mean.map((_value, row) => at(covariance, row * count + station));
  const total = at(column, station) + seen.variance;
  const surprise = seen.logarithm - at(mean, station);
  for (let row = 0; row < count; row += 1) {
    mean[row] = at(mean, row) + (at(column, row) / total) * surprise;
    for (let other = 0; other < count; other += 1) {
      const place = row * count + other;
      covariance[place] = at(covariance, place) - (at(column, row) * at(column, other)) / total;
    }
  }
}

/** Cholesky's decomposition of a positive definite matrix. */
function rootOf(matrix: Float64Array, count: number): Float64Array {
  const root = new Float64Array(count * count);
  for (let row = 0; row < count; row += 1) {
    for (let column = 0; column <= row; column += 1) {
      let rest = at(matrix, row * count + column);
      for (let other = 0; other < column; other += 1) {
        rest -= at(root, row * count + other) * at(root, column * count + other);
      }
      const isOwn = row === column;
      root[row * count + column] = isOwn
        ? Math.sqrt(Math.max(rest, 1e-12))
        : rest / at(root, column * count + column);
    }
  }
  return root;
}

/** Draws a day's pace: how many times as long everything takes at each station. */
export function drawPace({ mean, root }: Pace, normal: () => number, into: Float64Array): void {
  const values = mean.map(normal);
  const count = mean.length;
  for (let row = 0; row < count; row += 1) {
    let sum = at(mean, row);
    for (let column = 0; column <= row; column += 1)
      sum += at(root, row * count + column) * at(values, column);
    into[row] = Math.exp(sum);
  }
}
