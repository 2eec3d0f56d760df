import { type Cycle, cyclesOf } from "./cycles.ts";
import { meanCycle } from "./expected.ts";
import type { Hall, Known, PastDay, Spread, Station } from "./hall.ts";

/** How far an assumption may be off, as standard deviation of its logarithm: a fifth more or less is nothing strange. Ours. */
const assumptionDoubt = 0.2;
/**
 * By how much an assumption is too short, on the logarithm: whoever guesses how long something takes guesses too little
 * (Buehler, Griffin & Ross 1994, Journal of Personality and Social Psychology 67; that it is so much is ours).
 */
const optimism = 0.09;
/** What a station's times differ by from one of a hall's days to another, the same way. Ours, no source. */
const dayDoubt = 0.15;
/** Number of a hall's own turns that an assumed time, or an assumed spread, is worth. Ours, no source. */
const assumedTurns = 10;
/** A cycle counts for no more than so many times what was expected: more is a pause, or somebody was not there. Ours. */
const longest = 3;

/**
 * Learns each station's times from earlier days. Only the whole of turn and change-over is seen where tests are keyed, so
 * both are taken as longer or shorter by the same factor.
 */
export function knownFrom(days: readonly PastDay[]): Known[] {
  const cycles = days.flatMap((day) => cyclesOf(day).map((cycle) => ({ ...cycle, hall: day.hall })));
  const tests = new Map(days.flatMap(({ hall }) => hall.stations.map((station) => [station.test, station])));
  return [...tests.values()].flatMap((station) => {
    const here = cycles.filter(({ hall, station: index }) => hall.stations[index]?.test === station.test);
    return here.length === 0 ? [] : [knownOf(station, here)];
  });
}

function knownOf(station: Station, cycles: readonly Cycle[]): Known {
  const expected = cycles.map(({ athletes }) => meanCycle(station, athletes.length));
  const took = cycles.map((cycle, index) => Math.min(cycle.took, longest * (expected[index] ?? 0)));
  const factor = sumOf(took) / sumOf(expected);
  const logs = took.map((time, index) => Math.log(time / ((expected[index] ?? 1) * factor)));
  const sigma = station.lanes === 1 ? spreadOf(logs, station.turn.sigma) : station.turn.sigma;
  return {
    test: station.test,
    turn: { median: station.turn.median * factor, sigma },
    changeOver: { ...station.changeOver, median: station.changeOver.median * factor },
    turns: sumOf(cycles.map(({ athletes }) => athletes.length)),
  };
}

/** A spread seen in cycles, with the assumed one as so many more of them. */
function spreadOf(logs: readonly number[], assumed: number): number {
  const squares = sumOf(logs.map((log) => log ** 2));
  return Math.sqrt((squares + assumedTurns * assumed ** 2) / (logs.length + assumedTurns));
}

function sumOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}

/** A normal distribution by its mean and standard deviation. */
export interface Belief {
  readonly mean: number;
  readonly doubt: number;
}

/** A hall with the times that its stations are known by, and how far each may be off. */
export interface KnownHall {
  readonly hall: Hall;
  /** By station: what is believed of the logarithm of its pace today before anything of today is seen. */
  readonly beliefs: readonly Belief[];
}

/**
 * Puts together what is assumed of each station and what earlier days say: the more turns they are of, the less the
 * assumption counts.
 */
export function withKnown(hall: Hall, known: readonly Known[]): KnownHall {
  const both = hall.stations.map((station) => {
    const own = known.find(({ test }) => test === station.test);
    return own === undefined
      ? { station, belief: { mean: optimism, doubt: assumptionDoubt } }
      : pooled(station, own);
  });
  return {
    hall: { ...hall, stations: both.map(({ station }) => station) },
    beliefs: both.map(({ belief }) => belief),
  };
}

function pooled(station: Station, own: Known): { station: Station; belief: Belief } {
  const share = own.turns / (own.turns + assumedTurns);
  const turn = between(station.turn, own.turn, share);
  const changeOver = between(station.changeOver, own.changeOver, share);
  const parts = [dayDoubt, (1 - share) * assumptionDoubt, own.turn.sigma / Math.sqrt(Math.max(1, own.turns))];
  const belief = { mean: (1 - share) * optimism, doubt: Math.hypot(...parts) };
  return { station: { ...station, turn, changeOver }, belief };
}

/** Goes a share of the way from an assumed time to a known one, on logarithms. */
function between(assumed: Spread, own: Spread, share: number): Spread {
  if (assumed.median <= 0 || own.median <= 0) return own;
  const median = assumed.median * (own.median / assumed.median) ** share;
  return { median, sigma: assumed.sigma + share * (own.sigma - assumed.sigma) };
}
