import { expect, test } from "vitest";
import { blend } from "../../electron/domain/statistics/blend.ts";
import {
  startingTypicalErrors,
  type TypicalError,
  verdict,
} from "../../electron/domain/statistics/change.ts";
import { typicalErrorInterval } from "../../electron/domain/statistics/reliability.ts";
import { errorOfRepeats, runsOf } from "../../electron/domain/statistics/repeats.ts";
import { normals } from "./chance.ts";

/**
 * Whether the error in use holds what its words promise, where the truth is not what the program assumes: a start of
 * half of it, athletes who come again and again, a test that is learnt. Marks of hundreds of grains, so that rounding
 * plays no part.
 */
const truth = 20;
const level = 1000;

/** A start that is `times` the truth and worth so many degrees. */
function startOf(times: number, degrees: number): TypicalError {
  return { fixed: times * truth, share: 0, degrees, assumed: true, pairs: 0 };
}

/** The marks of one athlete a week apart, of which the second is better by what is learnt. */
function weekly(count: number, draw: () => number, learnt = 0) {
  const own = level + 5 * truth * draw();
  return Array.from({ length: count }, (_, week) => ({
    day: 7 * week,
    value: own + (week > 0 ? learnt : 0) + truth * draw(),
  }));
}

/** The share of athletes who stayed the same and are told "clear gain" by the error that so many pairs give. */
function falseGains(start: TypicalError, pairs: number, seed: number): number {
  const draw = normals(seed);
  const halls = 3000;
  let clear = 0;
  for (let hall = 0; hall < halls; hall += 1) {
    const runs = Array.from({ length: pairs }, () => weekly(2, draw)).flatMap(runsOf);
    const { error } = blend(start, errorOfRepeats(runs, start), null);
    for (let athlete = 0; athlete < 10; athlete += 1) {
      const [before, after] = [draw(), draw()].map((noise) => level + truth * noise);
      if (verdict("push-up", before ?? 0, after ?? 0, error) === "clear gain") clear += 1;
    }
  }
  return clear / (10 * halls);
}

// Bars: at most 6 % from 5 pairs on and 3 % from 20 on, whatever degrees a source is worth. With two pairs, two degrees.
test.each([
  [2, 2, 0.06],
  [2, 5, 0.06],
  [2, 20, 0.03],
  [6, 5, 0.06],
  [6, 20, 0.03],
  [19, 5, 0.06],
  [19, 20, 0.03],
])(
  "a start of half the truth worth %i degrees, and %i pairs: false clear gains at most %f",
  (degrees, pairs, bar) => {
    const wrong = falseGains(startOf(0.5, degrees), pairs, 40 + degrees + pairs);
    console.log(
      `half the truth, ${degrees} degrees, ${pairs} pairs: ${(100 * wrong).toFixed(2)} % false clear gains`,
    );
    expect(wrong).toBeLessThan(bar);
  },
);

test("a right start and few pairs: at most 2.5 %, and three standard errors of 30,000 athletes", () => {
  for (const pairs of [2, 5, 20]) {
    const wrong = falseGains(startOf(1, 2), pairs, pairs);
    console.log(`right start, ${pairs} pairs: ${(100 * wrong).toFixed(2)} % false clear gains`);
    expect(wrong).toBeLessThan(0.025 + 3 * Math.sqrt((0.025 * 0.975) / 30_000));
  }
});

test("without any pair the error says that it is assumed, whatever it is worth", () => {
  expect(blend(startOf(0.5, 19), null, null).error).toMatchObject({ assumed: true, pairs: 0 });
});

// The interval by χ² is exact only if the degrees of freedom are those of independent values.
test.each([
  [10, 3],
  [10, 4],
  [4, 5],
])(
  "%i athletes with %i marks a week apart: the interval of the error holds the truth 95 times in 100",
  (athletes, marks) => {
    const draw = normals(1000 * athletes + marks);
    const halls = 1000;
    let held = 0;
    for (let hall = 0; hall < halls; hall += 1) {
      const runs = Array.from({ length: athletes }, () => weekly(marks, draw, 3 * truth)).flatMap(runsOf);
      const own = errorOfRepeats(runs, startOf(1, 2));
      const { low, high } = typicalErrorInterval(own?.amount ?? 0, own?.degrees ?? 1);
      if (low < 1 && 1 < high) held += 1;
    }
    console.log(
      `${athletes} × ${marks}: the interval holds the truth in ${((100 * held) / halls).toFixed(1)} %`,
    );
    expect(Math.abs(held / halls - 0.95)).toBeLessThan(3 * Math.sqrt((0.95 * 0.05) / halls));
  },
);

test("with 60 pairs the used error comes within 5 % of the truth, from every start", () => {
  const draw = normals(1996);
  const halls = 150;
  for (const degrees of [2, 6, 19]) {
    const starts = degrees === 2 ? [0.5, 0.75, 1, 1.5, 2] : [0.5, 0.75, 1, 1.25];
    for (const times of starts) {
      let sum = 0;
      for (let hall = 0; hall < halls; hall += 1) {
        const runs = Array.from({ length: 60 }, () => weekly(2, draw)).flatMap(runsOf);
        const start = startOf(times, degrees);
        sum += blend(start, errorOfRepeats(runs, start), null).error.fixed / truth;
      }
      expect(Math.abs(sum / halls - 1), `${times} of the truth, ${degrees} degrees`).toBeLessThan(0.07);
      if (degrees === 2) expect(Math.abs(sum / halls - 1)).toBeLessThan(0.05);
    }
  }
});

// 3 / √2 = 2.121 spreads against t(0.975, 61) = 1.9996: Φ(0.1217) = 0.548. Bar: 53 %.
test("a true gain of three typical errors is called clear where the error is known from 60 pairs", () => {
  const draw = normals(33);
  const error = { ...startingTypicalErrors["push-up"], fixed: truth, share: 0, degrees: 61, assumed: false };
  const athletes = 20_000;
  let clear = 0;
  for (let athlete = 0; athlete < athletes; athlete += 1) {
    const [before, after] = [level + truth * draw(), level + 3 * truth + truth * draw()];
    if (verdict("push-up", before, after, error) === "clear gain") clear += 1;
  }
  console.log(`gain of 3 TE, one earlier mark: ${((100 * clear) / athletes).toFixed(1)} % clear`);
  expect(clear / athletes).toBeGreaterThan(0.53);
});
