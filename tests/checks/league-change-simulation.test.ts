import { expect, test } from "vitest";
import type { TypicalError } from "../../electron/domain/statistics/change.ts";
import { assumedHall, calmHall } from "../../electron/domain/statistics/hall.ts";
import type { Shared } from "../../electron/domain/statistics/shared.ts";
import { startingVariations } from "../../electron/domain/statistics/variation.ts";
import { leagueChangesOf } from "../../electron/domain/summary/league-changes.ts";
import { changedDay, type Result } from "../unit/summary/changed-day.ts";
import { normals } from "./chance.ts";
import { knownDays, knownTogether, marksOf, start, days as testDays, truth } from "./hall.ts";

/** Whether what a summary says of leagues holds, on invented leagues whose truth is known. */
const leagues = 2000;

interface Truth {
  readonly athletes: number;
  /** In typical errors: the mean of true changes, and how far they lie apart (SD). */
  readonly mean: number;
  readonly apart: number;
  /** What the hall moved today for everybody, and on the day of the last result. */
  readonly hall?: number;
  readonly hallThen?: number;
  readonly since?: string;
}

function results(league: string, truly: Truth, draw: () => number): Result[] {
  const { athletes, mean, apart, hall = 0, hallThen = 0, since = "2026-04-11" } = truly;
  return Array.from({ length: athletes }, () => {
    const own = 1000 + 3 * truth * draw();
    const change = mean + apart * draw() + hall;
    const before = own + truth * (hallThen + draw());
    return { league, since, before, now: own + truth * (change + draw()) };
  });
}

/** The error as it is, and as a hall knows it from so many pairs; of 0 it is an assumption that is right. */
function errorFrom(pairs: number, draw: () => number): TypicalError {
  return pairs === 0 ? start : knownTogether(pairs, [], draw).error;
}

/** What the summary says of these results; of a hall that is known to be calm, unless something else is known of it. */
function say(parts: readonly Result[], error: TypicalError, shared: Partial<Shared> = { hall: calmHall }) {
  const variation = { ...startingVariations["push-up"], error, ...shared };
  return leagueChangesOf(changedDay(parts, error), { ...startingVariations, "push-up": variation });
}

const percent = (part: number) => `${(100 * part).toFixed(1)} %`;
/** Three standard errors of a share of all leagues. */
const slack = (share: number) => 3 * Math.sqrt((share * (1 - share)) / leagues);

// Bar: 95 % of the intervals hold the true mean change, whether athletes change alike or not.
test.each([
  [8, 0],
  [8, 1],
  [20, 1],
  [60, 2],
])(
  "%i athletes whose true changes lie %f typical errors apart: the interval of the mean",
  (athletes, apart) => {
    const draw = normals(40 + athletes + apart);
    const inside = Array.from({ length: leagues }, () => {
      const [row] = say(results("Quarry Lane", { athletes, mean: 0.7, apart }, draw), start);
      const { low = 0, high = 0 } = row?.found?.mean ?? {};
      return low <= 0.7 * truth && 0.7 * truth <= high;
    }).filter(Boolean).length;
    console.log(
      `${athletes} athletes, ${apart} TE apart: ${percent(inside / leagues)} of intervals hold the mean`,
    );
    expect(Math.abs(inside / leagues - 0.95)).toBeLessThan(slack(0.95));
  },
);

// Bar: where nobody differs, nought is in at least 95 % of the intervals. The error is known from so many pairs.
test.each([
  [8, 0],
  [8, 20],
  [30, 5],
  [60, 20],
  [60, 60],
])("%i athletes who all changed alike, the error known from %i pairs: no spread", (athletes, pairs) => {
  const draw = normals(60 + athletes + pairs);
  const apart = Array.from({ length: leagues }, () => {
    const [row] = say(results("Quarry Lane", { athletes, mean: 2, apart: 0 }, draw), errorFrom(pairs, draw));
    return (row?.found?.spread.low ?? 0) > 0;
  }).filter(Boolean).length;
  console.log(`${athletes} athletes alike, ${pairs} pairs: ${percent(apart / leagues)} told apart`);
  expect(apart / leagues).toBeLessThan(0.05);
});

// Bars: a spread of one typical error among 60 is in 95 % of the intervals, found in the mean within a tenth, and seen
// to be more than nought in so many. With an error known exactly 64 % are possible: χ² of 59 degrees above 82.1 · ⅔. An
// error from 60 pairs is itself off by 9 %, so that a third of what is there can be told from none.
test.each([
  [0, 0.5],
  [60, 0.25],
])("sixty athletes whose true changes lie one typical error apart, %i pairs", (pairs, bar) => {
  const draw = normals(90 + pairs);
  const spreads = Array.from({ length: leagues }, () => {
    const truly = results("Quarry Lane", { athletes: 60, mean: 1, apart: 1 }, draw);
    const found = say(truly, errorFrom(pairs, draw))[0]?.found?.spread;
    return { amount: found?.amount ?? 0, low: found?.low ?? 0, high: found?.high ?? 0 };
  });
  const inside = spreads.filter(({ low, high }) => low <= truth && truth <= high).length / leagues;
  const seen = spreads.filter(({ low }) => low > 0).length / leagues;
  const middle = spreads.map(({ amount }) => amount).toSorted((a, b) => a - b)[leagues / 2] ?? 0;
  console.log(
    `60 athletes 1 TE apart, ${pairs} pairs: in ${percent(inside)}, more than nought in ${percent(seen)};`,
  );
  console.log(`  the middle one is ${(middle / truth).toFixed(2)} TE`);
  expect(inside).toBeGreaterThan(0.95 - slack(0.95));
  expect(seen).toBeGreaterThan(bar);
  expect(Math.abs(middle / truth - 1)).toBeLessThan(0.1);
});

// Bar: on at most 5 % of the days does anything hold where nobody has changed.
test.each([
  ["known to be calm", 0, calmHall],
  ["whose days differ by half an error, of which nothing is known", 0.5, assumedHall],
] as const)(
  "five leagues that stayed the same, a hall %s: how often anything is called more than chance",
  (name, differ, hall) => {
    const draw = normals(131);
    const names = ["Apple Row", "Basin End", "Coal Wharf", "Dyer Street", "Elm Yard"];
    const wrong = Array.from({ length: leagues }, () => {
      const moved = { hall: differ * draw(), hallThen: differ * draw() };
      const truly = { athletes: 12, mean: 0, apart: 0, ...moved };
      const day = names.flatMap((league) => results(league, truly, draw));
      return say(day, start, { hall }).some(({ found }) => found?.holds);
    }).filter(Boolean).length;
    console.log(
      `${names.length} leagues, a hall ${name}: ${percent(wrong / leagues)} of days call something more than chance`,
    );
    expect(wrong / leagues).toBeLessThan(0.05 + slack(0.05));
  },
);

// Bars: a hall that moves everybody by one typical error makes a league's change and not the difference to the others.
test("a hall that moves everybody is in each league's change, and not in what is compared with the others", () => {
  const draw = normals(17);
  let [mean, others] = [0, 0];
  for (let day = 0; day < leagues; day += 1) {
    const own = results("Quarry Lane", { athletes: 20, mean: 0, apart: 0.5, hall: 1 }, draw);
    const rest = results("Apple Row", { athletes: 35, mean: 0, apart: 1, hall: 1 }, draw);
    const found = say([...own, ...rest], start)[1]?.found;
    if ((found?.mean.low ?? 0) > 0) mean += 1;
    if ((found?.others?.low ?? 0) > 0 || (found?.others?.high ?? 0) < 0) others += 1;
  }
  console.log(
    `a hall of 1 TE: ${percent(mean / leagues)} see a change, ${percent(others / leagues)} a difference`,
  );
  expect(mean / leagues).toBeGreaterThan(0.5);
  expect(Math.abs(others / leagues - 0.05)).toBeLessThan(slack(0.05));
});

/** Halls whose days move everybody by half a typical error (SD). */
const halls = 600;
const moved = 0.5;

/**
 * Days of a hall, the last of them today, and what it knows from 60 others who came to all but today; of `learnt` typical errors
 * each of them gained by knowing the test.
 */
function hallOf(daysKnown: number, learnt: number, draw: () => number) {
  const shifts = Array.from({ length: Math.max(1, daysKnown) + 1 }, () => moved * draw());
  const past = shifts.slice(0, -1).map((shift, visit) => shift + (visit > 0 ? learnt : 0));
  const others = Array.from({ length: 60 }, () => marksOf(past, draw));
  const { learning, hall } = knownTogether(60, daysKnown === 0 ? [] : others, draw);
  return { shared: { learning, hall }, today: shifts.at(-1) ?? 0, before: shifts.at(-2) ?? 0, shifts };
}

const insideOf = ({ low, high }: { low: number; high: number }, value: number) =>
  low <= value && value <= high;

// Bar: 93 % of the intervals hold the mean of the true changes, whatever is known of the hall.
test.each([
  [8, 0, 0],
  [20, 0, 0],
  [60, 1, 0],
  [20, 0, 2],
  [60, 1, 2],
  [20, 0, 4],
  [60, 1, 4],
  [60, 0, 6],
])(
  "%i athletes %f TE apart in a hall whose days differ, %i days known: the mean's interval",
  (athletes, apart, daysKnown) => {
    const draw = normals(200 + athletes + 10 * daysKnown);
    let [held, without, width] = [0, 0, 0];
    for (let at = 0; at < halls; at += 1) {
      const { shared, today, before } = hallOf(daysKnown, 0, draw);
      const day = results("Quarry Lane", { athletes, mean: 0.7, apart, hall: today, hallThen: before }, draw);
      const mean = say(day, start, shared)[0]?.found?.mean ?? { low: 0, high: 0 };
      const calm = say(day, start)[0]?.found?.mean ?? { low: 0, high: 0 };
      if (insideOf(mean, 0.7 * truth)) held += 1;
      if (insideOf(calm, 0.7 * truth)) without += 1;
      width += (mean.high - mean.low) / 2 / truth / halls;
    }
    console.log(
      `${athletes} athletes, ${apart} TE apart, days of SD ½, ${daysKnown} known: ${percent(held / halls)} hold the mean`,
      `(± ${width.toFixed(2)} TE); without the hall ${percent(without / halls)}`,
    );
    expect(held / halls).toBeGreaterThan(0.93);
    expect(without / halls).toBeLessThan(0.9);
  },
);

// Bar: as above. Athletes who are here for the second time, of a test that teaches one typical error.
test.each([2, 4])(
  "a league of newcomers to a test that teaches: the interval without the learning, %i days known",
  (daysKnown) => {
    const draw = normals(300 + daysKnown);
    let [held, learnt] = [0, 0];
    for (let at = 0; at < halls; at += 1) {
      const { shared, today, before } = hallOf(daysKnown, 1, draw);
      const truly = { athletes: 20, mean: 0.7, apart: 0.5, hall: today + 1, hallThen: before };
      const found = say(results("Quarry Lane", truly, draw), start, shared)[0]?.found;
      if (insideOf(found?.mean ?? { low: 0, high: 0 }, 0.7 * truth)) held += 1;
      learnt += (found?.learnt ?? 0) / truth / halls;
    }
    console.log(
      `newcomers, ${daysKnown} days known: ${percent(held / halls)} hold the mean; ${learnt.toFixed(2)} TE taken off`,
    );
    expect(held / halls).toBeGreaterThan(0.93);
    expect(learnt).toBeGreaterThan(0.4);
  },
);

// Bars: nought is in 95 % of the spreads where nobody differs, and in 93 % of the differences where leagues do not, also where
// they are compared with different days.
test.each([
  ["nothing", 0],
  ["four days", 4],
] as const)(
  "athletes compared with two different days, %s known: no spread and no difference",
  (_name, daysKnown) => {
    const draw = normals(400 + daysKnown);
    let [apart, differ] = [0, 0];
    for (let at = 0; at < halls; at += 1) {
      const { shared, today, before, shifts } = hallOf(daysKnown, 0, draw);
      const longAgo = daysKnown < 2 ? moved * draw() : (shifts.at(-3) ?? 0);
      const part = (league: string, hallThen: number, since: string) =>
        results(league, { athletes: 20, mean: 0.7, apart: 0, hall: today, hallThen, since }, draw);
      const [first = "", second = ""] = testDays;
      const both = [...part("Quarry Lane", before, second), ...part("Quarry Lane", longAgo, first)];
      if ((say(both, start, shared)[0]?.found?.spread.low ?? 0) > 0) apart += 1;
      const two = say(
        [...part("Quarry Lane", before, second), ...part("Apple Row", longAgo, first)],
        start,
        shared,
      );
      if (!insideOf(two[0]?.found?.others ?? { low: 0, high: 0 }, 0)) differ += 1;
    }
    console.log(
      `compared with two days, ${daysKnown} known: ${percent(apart / halls)} told apart, ${percent(differ / halls)} differ`,
    );
    expect(apart / halls).toBeLessThan(0.05);
    expect(differ / halls).toBeLessThan(0.07);
  },
);

test("in a hall that six days have shown to be calm the mean's interval is less than 1.6 times as wide as without days", () => {
  const draw = normals(500);
  const ratios = Array.from({ length: 100 }, () => {
    const hall = knownDays(0, draw);
    const day = results("Quarry Lane", { athletes: 20, mean: 0.7, apart: 0 }, draw);
    const width = (shared?: Partial<Shared>) => {
      const { low = 0, high = 0 } = say(day, start, shared)[0]?.found?.mean ?? {};
      return high - low;
    };
    return width({ hall }) / width();
  });
  const mean = ratios.reduce((sum, ratio) => sum + ratio, 0) / ratios.length;
  console.log(
    `calm by six days, 20 athletes: ${mean.toFixed(2)} times as wide as in a hall that is calm for sure`,
  );
  expect(mean).toBeLessThan(1.6);
});
