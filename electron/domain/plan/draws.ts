import { filled } from "./numbers.ts";

/**
 * All that chance decides in one simulated day. It is drawn before the day and for each athlete and test by itself, so
 * that two halls can be tried with the same chance (common random numbers: Conway 1963, Management Science 10(1)).
 */
export interface Draws {
  /** Standard normal values, by athlete and station: how long a turn takes, and the change-over before it. */
  readonly turn: Float64Array;
  readonly changeOver: Float64Array;
  /** Standard normal values for turns that are known to have lasted a while already. */
  readonly spare: Float64Array;
  /** Uniform values, by athlete: when somebody comes in the window, whether at all, how late, and when they leave. */
  readonly arrives: Float64Array;
  readonly comes: Float64Array;
  readonly late: Float64Array;
  readonly leaves: Float64Array;
  /** By station: how many times as long everything takes there on this day. */
  readonly pace: Float64Array;
  /** By station: how long a heat that is not full waits for those who are about to come, in seconds. */
  readonly patience: Float64Array;
  /** By station: when it stands once, and for how long, in seconds. */
  readonly pauseFrom: Float64Array;
  readonly pauseFor: Float64Array;
  /** What this day's chance to come at all differs by, as logarithm of odds. */
  attendance: number;
}

/** How many times a turn is drawn again that has lasted longer than it was drawn. */
const spares = 48;

/** Returns the draws of a day without chance: every time is its median, everybody comes in the middle of the window. */
export function plainDraws(athletes: number, stations: number): Draws {
  const each = athletes * stations;
  return {
    turn: filled(each, 0),
    changeOver: filled(each, 0),
    spare: filled(spares, 0),
    arrives: filled(athletes, 0.5),
    comes: filled(athletes, 0.5),
    late: filled(athletes, 0.5),
    leaves: filled(athletes, 0.5),
    pace: filled(stations, 1),
    patience: filled(stations, 0),
    pauseFrom: filled(stations, Number.POSITIVE_INFINITY),
    pauseFor: filled(stations, 0),
    attendance: 0,
  };
}

/** Draws all that is of one athlete or turn. Pace, patience, pauses and attendance are left to whoever knows the day. */
export function draw(draws: Draws, random: () => number): void {
  fillNormal(draws.turn, random);
  fillNormal(draws.changeOver, random);
  fillNormal(draws.spare, random);
  for (const uniforms of [draws.arrives, draws.comes, draws.late, draws.leaves])
    fillUniform(uniforms, random);
}

function fillUniform(values: Float64Array, random: () => number): void {
  for (let index = 0; index < values.length; index += 1) values[index] = random();
}

/** Box & Muller 1958, Annals of Mathematical Statistics 29: two values at a time. */
function fillNormal(values: Float64Array, random: () => number): void {
  for (let index = 0; index < values.length; index += 2) {
    const radius = Math.sqrt(-2 * Math.log(1 - random()));
    const angle = 2 * Math.PI * random();
    values[index] = radius * Math.cos(angle);
    // Past the end nothing is written.
    values[index + 1] = radius * Math.sin(angle);
  }
}

/** Returns a standard normal value. */
export function drawNormal(random: () => number): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}
