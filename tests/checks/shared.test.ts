import { expect, test } from "vitest";
import { calmHall } from "../../electron/domain/statistics/hall.ts";
import { assumedLearning } from "../../electron/domain/statistics/learning.ts";
import { sharedOf } from "../../electron/domain/statistics/shared.ts";
import { normals } from "./chance.ts";
import { sleep } from "./sleep.ts";

// R: t.test(extra ~ group, sleep, paired = TRUE): mean 1.58, t 4.0621, so that its standard error is 0.38896. The error
// of one value is SD(d) / √2 = 0.8697. What is assumed of the step, mean 0 and SD 1, is taken out of the answer again.
test("the step from a first to a second visit is R's paired difference", () => {
  const error = { fixed: 1.22995 / Math.SQRT2, share: 0 };
  const { learning, hall } = sharedOf(
    sleep.map(([one, other], at) => [
      { day: at, value: one },
      { day: at, value: other },
    ]),
    error,
    0,
  );
  const [step] = learning.steps;
  const variance = learning.covariance[0]?.[0] ?? 0;
  const without = 1 / (1 / variance - 1);
  expect(((step?.by ?? 0) * without * error.fixed) / variance).toBeCloseTo(1.58, 4);
  expect(Math.sqrt(without) * error.fixed).toBeCloseTo(1.58 / 4.0621, 4);
  expect(step?.athletes).toBe(10);
  expect(hall.days).toBe(0);
});

const truth = 20;

/** A hall of four days with newcomers on each, who learn one typical error and then half of one. */
function mixed(draw: () => number, spread: number) {
  const shifts = [0, 1, 2, 3].map(() => spread * draw());
  return Array.from({ length: 80 }, (_, at) => {
    const own = 1000 + 60 * draw();
    const first = at % 4;
    return shifts.slice(first).map((shift, visit) => ({
      day: 98 * (first + visit),
      value: own + truth * (draw() + shift + (visit > 0 ? 1 : 0) + (visit > 1 ? 0.5 : 0)),
    }));
  });
}

// What is learnt is found beside what days move, because newcomers and others share days.
test("learning is found in a hall that moves, and its interval holds", () => {
  const draw = normals(12);
  const halls = 300;
  let [held, sum, days] = [0, 0, 0];
  for (let hall = 0; hall < halls; hall += 1) {
    const { learning, hall: found } = sharedOf(mixed(draw, 0.5), { fixed: truth, share: 0 }, 0.03);
    const [step] = learning.steps;
    const reach = 1.96 * Math.sqrt(learning.covariance[0]?.[0] ?? 0);
    if (Math.abs((step?.by ?? 0) - 1) < reach) held += 1;
    sum += step?.by ?? 0;
    days += Math.sqrt(found.variance);
  }
  console.log(
    `1 TE learnt, days of SD ½: said ${(sum / halls).toFixed(2)}, the interval holds in ${((100 * held) / halls).toFixed(1)} %;`,
    `SD of the days said ${(days / halls).toFixed(2)}`,
  );
  expect(held / halls).toBeGreaterThan(0.92);
  // What is assumed and what all may have trained take a little of it.
  expect(sum / halls).toBeGreaterThan(0.8);
  expect(sum / halls).toBeLessThan(1.05);
  expect(Math.abs(days / halls - 0.5)).toBeLessThan(0.15);
});

test("a calm hall of several days says so, and steady training is no shift of a day", () => {
  const draw = normals(13);
  const said = (gain: number, spread: number) => {
    let sum = 0;
    for (let hall = 0; hall < 100; hall += 1) {
      const shifts = Array.from({ length: 6 }, (_, at) => gain * at + spread * draw());
      const marks = Array.from({ length: 60 }, () => {
        const own = 1000 + 60 * draw();
        return shifts.map((shift, at) => ({ day: 98 * at, value: own + truth * (shift + draw()) }));
      });
      sum += Math.sqrt(sharedOf(marks, { fixed: truth, share: 0 }, 0.03).hall.variance);
    }
    return sum / 100;
  };
  const [calm, training, moving] = [said(0, 0), said(0.4, 0), said(0, 0.5)];
  console.log(
    `SD of days said: calm ${calm.toFixed(2)}, all training ${training.toFixed(2)}, ½ ${moving.toFixed(2)}`,
  );
  expect(calm).toBeLessThan(0.2);
  expect(training).toBeLessThan(0.3);
  expect(Math.abs(moving - 0.5)).toBeLessThan(0.15);
});

test("with seven athletes nothing is said of learning, and nothing of days", () => {
  const draw = normals(14);
  const few = mixed(draw, 0.5).filter((_each, at) => at % 12 === 0);
  expect(few.length).toBe(7);
  expect(sharedOf(few, { fixed: truth, share: 0 }, 0.03).learning).toEqual(assumedLearning);
  expect(calmHall.variance).toBe(0);
});
