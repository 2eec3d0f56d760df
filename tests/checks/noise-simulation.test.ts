import { expect, test } from "vitest";
import { blend, startingDegrees } from "../../electron/domain/statistics/blend.ts";
import { startingTypicalErrors, verdict } from "../../electron/domain/statistics/change.ts";
import { type Pair, typicalErrorOf, typicalShareOf } from "../../electron/domain/statistics/reliability.ts";
import type { TestCode } from "../../electron/domain/tests/registry.ts";
import { protocols } from "../../electron/domain/tests/registry.ts";
import { normals } from "./chance.ts";

/**
 * Simulations with a known truth: whether the words promise more than the numbers hold. Models ours: an athlete's true
 * mark, a true gain of N(0.5, 1.5) typical errors or none at all for four of ten, and noise of the stated typical error.
 */
const athletes = 2000;
const seeds = Array.from({ length: 20 }, (_, index) => 1000 + 77 * index);

/** A middling mark and the spread between athletes, in grains. */
const hall = {
  "push-up": [24, 6],
  agility: [112, 12],
  vertical: [400, 60],
  core: [150, 40],
  endurance: [380_000, 40_000],
} as const satisfies Partial<Record<TestCode, readonly [middle: number, spread: number]>>;

type Simulated = keyof typeof hall;

interface Told {
  /** In typical errors, positive for better. */
  readonly gain: number;
  readonly verdict: string;
}

/** Two tests of everybody, judged as the program does. */
function twoTests(code: Simulated, seed: number): Told[] {
  const draw = normals(seed);
  const [middle, spread] = hall[code];
  const { kind, amount } = startingTypicalErrors[code];
  const towards = protocols[code].better === "higher" ? 1 : -1;
  return Array.from({ length: athletes }, (_, index) => {
    const before = Math.max(middle / 2, middle + spread * draw());
    const gain = index % 10 < 4 ? 0 : 0.5 + 1.5 * draw();
    const sizeOf = (mark: number) => (kind === "grains" ? amount : amount * mark);
    const after = before + towards * gain * sizeOf(before);
    const [first, second] = [before, after].map((mark) => Math.round(mark + sizeOf(mark) * draw()));
    return { gain, verdict: verdict(code, first ?? 0, second ?? 0) };
  });
}

const share = (told: readonly Told[], said: string) =>
  told.filter(({ verdict: word }) => word === said).length / told.length;

// At most 2.5 %; three standard errors of a share among so many may lie above it by chance.
test.each(Object.keys(hall) as Simulated[])(
  "%s: a clear gain is rarely said of who has not gained",
  (code) => {
    const told = seeds.flatMap((seed) => twoTests(code, seed));
    const idle = told.filter(({ gain }) => gain === 0);
    const noGain = told.filter(({ gain }) => gain <= 0);
    const large = told.filter(({ gain }) => gain > 4);
    const wrong = share(noGain, "clear gain");
    const percent = (part: number) => `${(100 * part).toFixed(2)} %`;
    console.log(
      `${code}: "clear gain" wrong for ${percent(wrong)} of ${noGain.length} without a gain`,
      `(${percent(share(idle, "clear gain"))} of ${idle.length} who stayed the same),`,
      `said of ${percent(share(large, "clear gain"))} of gains above four typical errors`,
    );
    const allowed = (among: number) => 0.025 + 3 * Math.sqrt((0.025 * 0.975) / among);
    expect(wrong).toBeLessThan(allowed(noGain.length));
    expect(share(idle, "clear gain")).toBeLessThan(allowed(idle.length));
    expect(share(idle, "clear loss")).toBeLessThan(allowed(idle.length));
    // And it is said at all: of four typical errors and more, mostly.
    expect(share(large, "clear gain")).toBeGreaterThan(0.75);
  },
);

/** The used typical error from so many pairs of unchanged athletes, as a share of the true one. */
function blended(code: Simulated, pairs: number, wrongBy: number, draw: () => number): number {
  const [middle, spread] = hall[code];
  const { kind, amount } = startingTypicalErrors[code];
  const made = Array.from({ length: pairs }, (): Pair => {
    const mark = Math.max(middle / 2, middle + spread * draw());
    const size = kind === "grains" ? amount : amount * mark;
    return [mark + size * draw(), 1.01 * mark + size * draw()];
  });
  const own = kind === "grains" ? typicalErrorOf(made) : typicalShareOf(made);
  return blend(wrongBy * amount, own, null).amount / amount;
}

test("with 60 pairs the used error comes within 5 % of the true one, from a wrong start as well", () => {
  const draw = normals(1996);
  const halls = 400;
  for (const wrongBy of [0.5, 0.75, 1, 1.5, 2]) {
    const used = (pairs: number) =>
      Array.from({ length: halls }, () => blended("vertical", pairs, wrongBy, draw));
    const meanOf = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / halls;
    const [five, twenty, sixty] = [5, 20, 60].map((pairs) => meanOf(used(pairs)));
    console.log(
      `start ${wrongBy} of the truth: with 5, 20 and 60 pairs ${five?.toFixed(3)}, ${twenty?.toFixed(3)} and`,
      `${sixty?.toFixed(3)} of it`,
    );
    expect(Math.abs((sixty ?? 0) - 1)).toBeLessThan(0.05);
  }
});

// The reason given for two degrees of freedom: without chance, √((d f² + 59) / (d + 59)).
test("two degrees of freedom are the most that a start twice too large allows", () => {
  const after60 = (degrees: number, wrongBy: number) =>
    Math.sqrt((degrees * wrongBy ** 2 + 59) / (degrees + 59));
  expect(after60(startingDegrees, 2)).toBeLessThan(1.05);
  expect(after60(startingDegrees, 0.5)).toBeGreaterThan(0.95);
  expect(after60(startingDegrees + 1, 2)).toBeGreaterThan(1.05);
});

test("a few pairs that agree by luck do not make every change a clear one", () => {
  const draw = normals(2024);
  const halls = 2000;
  for (const pairs of [2, 5, 10]) {
    let clear = 0;
    for (let index = 0; index < halls; index += 1) {
      const amount = blended("vertical", pairs, 1, draw) * startingTypicalErrors.vertical.amount;
      const error = { ...startingTypicalErrors.vertical, amount, assumed: false, pairs };
      const [before, after] = [draw(), draw()].map((noise) => Math.round(400 * (1 + 0.04 * noise)));
      if (verdict("vertical", before ?? 0, after ?? 0, error) === "clear gain") clear += 1;
    }
    console.log(
      `${pairs} pairs and a right start: "clear gain" wrong for ${((100 * clear) / halls).toFixed(2)} %`,
    );
    expect(clear / halls).toBeLessThan(0.055);
  }
});
