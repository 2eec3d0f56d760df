import { describe, expect, test } from "vitest";
import { seededChance } from "../../../electron/domain/chance.ts";
import { draw, plainDraws } from "../../../electron/domain/plan/draws.ts";
import { beginning, floorOf } from "../../../electron/domain/plan/floor.ts";
import { simulate } from "../../../electron/domain/plan/simulate.ts";
import { waitsIn } from "../../../electron/domain/plan/turns.ts";
import { athletesOf, hallOf, still } from "./halls.ts";

/** One place whose athletes arrive by a Poisson process: long enough that chance moves a mean by some hundredths. */
const count = 60_000;
const turn = 60;

/** Lets the one place run at a load below 1, with turns that vary as a lognormal time with this sigma. */
function longRun(load: number, sigma: number) {
  const random = seededChance([20, 26, 11, 30]);
  const median = turn / Math.exp(sigma ** 2 / 2);
  let now = 1;
  const athletes = athletesOf(count, ["vertical"]).map((athlete) => {
    now -= (turn / load) * Math.log(1 - random());
    return { ...athlete, arrives: { from: now, until: now } };
  });
  const draws = plainDraws(count, 1);
  draw(draws, random);
  const station = { ...still("vertical", median), turn: { median, sigma } };
  return simulate(floorOf(beginning(hallOf([station]), athletes)), draws);
}

describe.each([0.5, 0.7, 0.85])("a single place at a load of %f", (load) => {
  const constant = longRun(load, 0);

  test("athletes wait half as long as with exponential turns (M/M/1), where turns are constant", () => {
    // Pollaczek 1930 and Khinchine 1932: the wait before service is λ E[S²] / (2 (1 − ρ)).
    const exponential = (load * turn) / (1 - load);
    expect(waitsIn(constant).mean / exponential).toBeCloseTo(0.5, 1);
    expect(Math.abs(waitsIn(constant).mean / exponential - 0.5)).toBeLessThan(0.02);
  });

  test("turns that vary make the wait longer by the square of their variation", () => {
    const varied = longRun(load, 0.5);
    const wanted = ((load * turn) / (2 * (1 - load))) * Math.exp(0.5 ** 2);
    expect(Math.abs(waitsIn(varied).mean / wanted - 1)).toBeLessThan(0.06);
  });

  test("as many wait on average as arrive in the time that one waits (Little 1961, Operations Research 9)", () => {
    const { starts, readied, end } = constant;
    // Looked at from outside every minute, as somebody with a clock would count them.
    let seen = 0;
    const looks = Math.floor(end / turn);
    const sorted = (times: Float64Array) => times.toSorted();
    const [came, began] = [sorted(readied), sorted(starts)];
    let [arrived, started] = [0, 0];
    for (let look = 0; look < looks; look += 1) {
      const at = (look + 0.5) * turn;
      while (arrived < count && (came[arrived] ?? 0) <= at) arrived += 1;
      while (started < count && (began[started] ?? 0) <= at) started += 1;
      seen += arrived - started;
    }
    const rate = count / end;
    expect(Math.abs(seen / looks / (rate * waitsIn(constant).mean) - 1)).toBeLessThan(0.02);
  });
});
