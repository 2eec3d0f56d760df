import { expect, test } from "vitest";
import { startingTypicalErrors, type TypicalError } from "../../electron/domain/statistics/change.ts";
import { leagueChangesOf } from "../../electron/domain/summary/league-changes.ts";
import { changedDay, type Result } from "../unit/summary/changed-day.ts";
import { normals } from "./chance.ts";
import { known, start, truth } from "./hall.ts";

/** Whether what a summary says of leagues holds, on invented leagues whose truth is known. */
const leagues = 2000;

interface Truth {
  readonly athletes: number;
  /** In typical errors: the mean of true changes, and how far they lie apart (SD). */
  readonly mean: number;
  readonly apart: number;
  /** What the hall moved today for everybody. */
  readonly hall?: number;
}

function results(league: string, { athletes, mean, apart, hall = 0 }: Truth, draw: () => number): Result[] {
  return Array.from({ length: athletes }, () => {
    const own = 1000 + 3 * truth * draw();
    const change = mean + apart * draw() + hall;
    return { league, before: own + truth * draw(), now: own + truth * (change + draw()) };
  });
}

/** The error as it is, and as a hall knows it from so many pairs; of 0 it is an assumption that is right. */
function errorFrom(pairs: number, draw: () => number): TypicalError {
  return pairs === 0 ? start : known(pairs, [], draw).error;
}

function say(parts: readonly Result[], error: TypicalError) {
  return leagueChangesOf(changedDay(parts, error), { ...startingTypicalErrors, "push-up": error });
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
test("five leagues that stayed the same: how often anything is called more than chance", () => {
  const draw = normals(131);
  const names = ["Apple Row", "Basin End", "Coal Wharf", "Dyer Street", "Elm Yard"];
  const wrong = Array.from({ length: leagues }, () => {
    const day = names.flatMap((name) => results(name, { athletes: 12, mean: 0, apart: 0 }, draw));
    return say(day, start).some(({ found }) => found?.holds);
  }).filter(Boolean).length;
  console.log(`${names.length} leagues: ${percent(wrong / leagues)} of days call something more than chance`);
  expect(wrong / leagues).toBeLessThan(0.05 + slack(0.05));
});

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
