import { expect, test } from "vitest";
import { calmHall } from "../../electron/domain/statistics/hall.ts";
import { assumedLearning } from "../../electron/domain/statistics/learning.ts";
import { newsOf } from "../../electron/domain/statistics/news.ts";
import { normals } from "./chance.ts";
import { known, knownDays, marksOf, days as testDays, truth } from "./hall.ts";

/**
 * Whether the words hold where there are several earlier marks. A hall of 60 athletes who have not changed over so many
 * tests, its error known from 60 pairs; all that the program knows is computed from its marks.
 */
const [halls, hallsThatGain] = [120, 480];
const athletes = 60;

interface Told {
  readonly clear: boolean;
  /** How far the last mark lay below the athlete's others, and below what they were good for, in typical errors. */
  readonly belowOthers: number;
  readonly belowTruth: number;
}

/** What is known of days; where it is that they are calm, nobody learns either. */
type Days = "calm for sure" | "calm by six days" | "not known";

function tell(earlier: number, gain: number, seed: number, days: Days = "not known"): Told[] {
  const draw = normals(seed);
  return Array.from({ length: gain === 0 ? halls : hallsThatGain }, () => {
    const people = Array.from({ length: athletes }, () => {
      const noise = Array.from({ length: earlier + 1 }, draw);
      const own = 1000 + 3 * truth * draw();
      return noise.map((each, at) => ({
        ...{ date: testDays[at] ?? "", value: own + truth * (each + (at === earlier ? gain : 0)) },
        off: each,
      }));
    });
    const before = people.map((marks) => marks.slice(0, -1));
    const learned = known(60, before, draw);
    const hall = days === "calm for sure" ? calmHall : knownDays(0, draw);
    const variation = days === "not known" ? learned : { ...learned, learning: assumedLearning, hall };
    return people.map((marks, at): Told => {
      const [last, others] = [marks.at(-2)?.off ?? 0, marks.slice(0, -2).map(({ off }) => off)];
      const mean = others.reduce((sum, off) => sum + off, 0) / Math.max(1, others.length);
      const mark = marks.at(-1) ?? { date: "", value: 0 };
      const { verdict } = newsOf("push-up", mark, before[at] ?? [], variation);
      return { clear: verdict === "clear gain", belowOthers: mean - last, belowTruth: -last };
    });
  }).flat();
}

/** Those of halls in which nobody changed, after so many earlier marks: made once, and looked at from two sides. */
const stayed = new Map<number, Told[]>();
function tellStayed(earlier: number): Told[] {
  const told = stayed.get(earlier) ?? tell(earlier, 0, 300 + earlier);
  stayed.set(earlier, told);
  return told;
}

const share = (told: readonly Told[]) => told.filter(({ clear }) => clear).length / told.length;
const percent = (part: number) => `${(100 * part).toFixed(2)} %`;

// Bars: 2.5 % of all who stayed the same, and three standard errors; 3.5 % of those whose last mark was at least one
// typical error below their others, which is what one can see. Below what they are good for, which nobody sees, the share
// is larger, and the less the more marks there are.
test.each([1, 2, 3, 6])("%i earlier marks, nobody changed: false clear gains", (earlier) => {
  const told = tellStayed(earlier);
  const low = told.filter(({ belowOthers }) => belowOthers >= 1);
  const truly = told.filter(({ belowTruth }) => belowTruth >= 1);
  console.log(
    `${earlier} earlier: ${percent(share(told))} of ${told.length};`,
    `after a last mark that looks low ${percent(share(low))} of ${low.length}; is low ${percent(share(truly))}`,
  );
  expect(share(told)).toBeLessThan(0.025 + 3 * Math.sqrt((0.025 * 0.975) / told.length));
  if (earlier > 1) expect(share(low)).toBeLessThan(0.035);
});

// As it stands, above the bar of 3.5 %, which can't be met beside the power (`low-simulation`): regression to the mean.
test.each([
  [1, 0.119],
  [2, 0.056],
  [3, 0.056],
  [6, 0.038],
])(
  "not met: after a last mark that truly is low, %i earlier marks, a share of %f false clear gains",
  (earlier, stands) => {
    const truly = tellStayed(earlier).filter(({ belowTruth }) => belowTruth >= 1);
    expect(share(truly)).toBeCloseTo(stands, 2);
    expect(share(truly)).toBeGreaterThan(0.035);
  },
);

// Bars: 53 % with one earlier mark, 70 % with three, where nobody learns and days are known to be calm. Where nothing is
// known of days or of learning, they can't be had beside at most 3.5 % false gains (`shared-simulation`), see below.
test.each([
  [1, "calm by six days", 0.53],
  [3, "calm for sure", 0.7],
  [3, "calm by six days", 0.69],
] as const)(
  "%i earlier marks, days %s, and a gain of three typical errors: clear in at least %f",
  (earlier, days, bar) => {
    const told = tell(earlier, 3, 500 + earlier, days);
    console.log(`gain of 3 TE, ${earlier} earlier, days ${days}: ${percent(share(told))} of ${told.length}`);
    expect(share(told)).toBeGreaterThan(bar);
  },
);

// As it stands, below the bars.
test.each([
  [1, 0.512, 0.53],
  [3, 0.678, 0.7],
])(
  "not met: %i earlier marks, nothing known of days, a gain of three is clear in %f and not in %f",
  (earlier, stands, bar) => {
    const told = tell(earlier, 3, 500 + earlier);
    console.log(
      `gain of 3 TE, ${earlier} earlier, days not known: ${percent(share(told))} of ${told.length}`,
    );
    expect(share(told)).toBeCloseTo(stands, 2);
    expect(share(told)).toBeLessThan(bar);
  },
);

test("a level that has moved is followed", () => {
  const draw = normals(77);
  const climb = Array.from({ length: 60 }, () => marksOf([0, 2, 4, 6, 8, 10], draw));
  const variation = known(60, climb, draw);
  // Everybody climbs alike, so that a day explains it; still the level must not stay behind by more than its error.
  const behind = climb.map((marks) => {
    const { level, verdict } = newsOf(
      "push-up",
      marks.at(-1) ?? { date: "", value: 0 },
      marks.slice(0, -1),
      variation,
    );
    return { verdict, lag: ((marks.at(-1)?.value ?? 0) - (level ?? 0)) / truth };
  });
  const mean = behind.reduce((sum, { lag }) => sum + lag, 0) / behind.length;
  expect(mean).toBeGreaterThan(2);
  expect(behind.filter(({ verdict }) => verdict?.endsWith("loss"))).toEqual([]);
});
