import { between, type Person, roughlyNormal } from "./people.ts";
import { type DoneTest, doneTests } from "./tests.ts";

/** What somebody is good for in each test, on the day before any noise: in the test's grains, leaps in mm. */
export type Ability = Readonly<Record<DoneTest, number>>;

interface Spread {
  readonly mean: number;
  readonly sd: number;
  readonly least: number;
  readonly most: number;
  /** A gain that training brings between two days; below zero where less is better. */
  readonly gain: number;
}

/** Marks of people who train: ours, plausible and no norm. Reps, quarter landings, mm, s, ms. */
const spreads: Readonly<Record<DoneTest, Spread>> = {
  "push-up": { mean: 19, sd: 6, least: 8, most: 35, gain: 4 },
  agility: { mean: 108, sd: 11, least: 80, most: 136, gain: 7 },
  vertical: { mean: 355, sd: 40, least: 290, most: 450, gain: 19 },
  core: { mean: 155, sd: 50, least: 60, most: 290, gain: 20 },
  endurance: { mean: 305_000, sd: 42_000, least: 215_000, most: 415_000, gain: -13_000 },
};

export function makeAbility(random: () => number, { category, variant }: Person): Ability {
  return each((test) => {
    const { mean, sd, least, most } = spreads[test];
    const taller = test === "vertical" && category === "men" ? 45 : 0;
    const easier = test === "push-up" && variant === "knee" ? 5 : 0;
    return clamp(mean + taller + easier + sd * roughlyNormal(random), least, most);
  });
}

/** The same person a training block later: in every third test they have truly gained, now and then lost a little. */
export function later(random: () => number, ability: Ability): Ability {
  return each((test) => {
    const { gain } = spreads[test];
    const luck = random();
    if (luck < 0.36) return ability[test] + gain;
    return luck > 0.94 ? ability[test] - gain / 2 : ability[test];
  });
}

/** What the invented people vary by from day to day, in grains at this ability: about as the program assumes. */
const swings: Readonly<Record<DoneTest, (ability: number) => number>> = {
  "push-up": () => 2,
  agility: () => 4,
  vertical: (height) => 0.04 * height,
  core: (held) => 0.06 * held,
  endurance: (time) => 0.03 * time,
};

/** What they show on one day: what they are good for, with the noise of the test. */
export function onTheDay(random: () => number, ability: Ability): Ability {
  return each((test) => {
    const swing = swings[test](ability[test]);
    return Math.max(1, Math.round(ability[test] + swing * roughlyNormal(random)));
  });
}

function each(value: (test: DoneTest) => number): Ability {
  return Object.fromEntries(doneTests.map((test) => [test, value(test)])) as Record<DoneTest, number>;
}

function clamp(value: number, least: number, most: number): number {
  return Math.min(most, Math.max(least, value));
}

/** Seconds as `m:ss`, with as many decimals as asked for. */
export function clock(ms: number, decimals: 0 | 1 | 2): string {
  const step = 10 ** (3 - decimals);
  const whole = Math.floor(ms / step) * step;
  const seconds = (whole % 60_000) / 1000;
  const text = seconds.toFixed(decimals);
  return `${Math.floor(whole / 60_000)}:${seconds < 10 ? `0${text}` : text}`;
}

/** A height or reach as the league writes it: half centimetres, or quarter inches of exactly 6.35 mm. */
export interface Tape {
  readonly unit: "cm" | "in";
  /** The nearest step of the tape, in steps. */
  steps(mm: number): number;
  /** Steps as text. */
  write(steps: number): string;
}

const centimetres: Tape = {
  unit: "cm",
  steps: (mm) => Math.round(mm / 5),
  write: (steps) => String(steps / 2),
};

const inches: Tape = {
  unit: "in",
  steps: (mm) => Math.round(mm / 6.35),
  write: (steps) => String(steps / 4),
};

/** One league measures in inches. */
export function tapeOf({ league }: Person): Tape {
  return league === "Kiln Hollow" ? inches : centimetres;
}

/** How high somebody reaches standing, in mm. */
export function makeReach(random: () => number): number {
  return between(random, 2010, 2330);
}
