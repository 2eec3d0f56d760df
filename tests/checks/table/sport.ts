import { bundleOf } from "../../../electron/api/bundle/prepare.ts";
import { leagueSizeOf } from "../../../electron/domain/privacy/quasi.ts";
import { type Candidate, leastK } from "../../../electron/domain/privacy/rule.ts";
import { typicalError } from "../../../electron/domain/statistics/change.ts";
import { normalShare } from "../../../electron/domain/statistics/normal.ts";
import {
  defaultParameters,
  protocolOf,
  type TestCode,
  testCodes,
} from "../../../electron/domain/tests/registry.ts";
import { normals } from "../chance.ts";

/**
 * An invented sport, of which every true percentile is known: results of a category and age are normal about a mean that
 * is known, from athletes who differ, halls that differ, and each athlete's own variation from day to day. None of the
 * figures says anything of real people.
 */
const categories = ["women", "men", "open"] as const;
const ageBands = ["20 to 24", "25 to 29", "30 to 34", "35 to 39"] as const;
type Category = (typeof categories)[number];
type AgeBand = (typeof ageBands)[number];

/** How common they are, as shares that come to 1. */
const share = {
  category: { women: 0.6, men: 0.25, open: 0.15 },
  age: { "20 to 24": 0.25, "25 to 29": 0.35, "30 to 34": 0.25, "35 to 39": 0.15 },
} as const satisfies { category: Record<Category, number>; age: Record<AgeBand, number> };

/** Mean, and spread between athletes, in grains of each test. What a hall adds has a third of that spread. */
const usual: Readonly<Record<TestCode, { mean: number; spread: number }>> = {
  "push-up": { mean: 34, spread: 7 },
  agility: { mean: 112, spread: 12 },
  vertical: { mean: 8000, spread: 1300 },
  core: { mean: 150, spread: 30 },
  endurance: { mean: 370_000, spread: 40_000 },
};
const shiftOf = { women: 0, men: 0.8, open: 0.4 } as const;
const ageShiftOf = { "20 to 24": 0.1, "25 to 29": 0.2, "30 to 34": 0, "35 to 39": -0.3 } as const;
const hallShare = 1 / 3;

/** Everybody's own variation from day to day (SD, grains): the program's starting figures at the mean. */
export const ownVariation = Object.fromEntries(
  testCodes.map((test) => [test, typicalError(test, usual[test].mean)]),
) as Readonly<Record<TestCode, number>>;

/** Somebody of the sport; `truth` is what they are good for in each test, in grains. */
interface Athlete {
  readonly category: Category;
  readonly ageBand: AgeBand;
  readonly truth: Readonly<Record<TestCode, number>>;
}

/** A hall with its athletes. */
export interface Hall {
  readonly athletes: readonly Athlete[];
}

function meanOf(test: TestCode, category: Category, ageBand: AgeBand): number {
  const { mean, spread } = usual[test];
  const direction = protocolOf(test).better === "higher" ? 1 : -1;
  return mean + direction * spread * (shiftOf[category] + ageShiftOf[ageBand]);
}

/** Draws halls of `from` to `to` athletes; what each test is done like in a hall differs by test. */
export function hallsOf(count: number, [from, to]: readonly [number, number], seed: number): Hall[] {
  const draw = normals(seed);
  const uniform = () => normalShare(draw());
  const oneOf = <Name extends string>(shares: Record<Name, number>): Name => {
    let left = uniform();
    const names = Object.keys(shares) as Name[];
    return (
      names.find((name) => {
        left -= shares[name];
        return left < 0;
      }) ?? (names.at(-1) as Name)
    );
  };
  return Array.from({ length: count }, () => {
    const adds = new Map(testCodes.map((test) => [test, hallShare * usual[test].spread * draw()]));
    const size = Math.round(from + (to - from) * uniform());
    return {
      athletes: Array.from({ length: size }, () => {
        const [category, ageBand] = [oneOf(share.category), oneOf(share.age)];
        const truth = Object.fromEntries(
          testCodes.map((test) => [
            test,
            meanOf(test, category, ageBand) + (adds.get(test) ?? 0) + usual[test].spread * draw(),
          ]),
        ) as Record<TestCode, number>;
        return { category, ageBand, truth };
      }),
    };
  });
}

/** What somebody shows on a day: whole grains, none below nothing. */
export function shown(truth: number, own: number, draw: () => number): number {
  return Math.max(0, Math.round(truth + own * draw()));
}

/**
 * The true place of somebody who is good for `truth`: how many of a hundred results of the sport are worse. Of everybody
 * where no category or age is given.
 */
export function truePlace(
  test: TestCode,
  truth: number,
  own: number,
  among: { readonly category: string | null; readonly ageBand: string | null },
): number {
  const { spread } = usual[test];
  const total = Math.hypot(spread, hallShare * spread, own);
  let [worse, all] = [0, 0];
  for (const category of categories) {
    for (const ageBand of ageBands) {
      if (among.category !== null && among.category !== category) continue;
      if (among.ageBand !== null && among.ageBand !== ageBand) continue;
      const weight = share.category[category] * share.age[ageBand];
      const below = normalShare((truth - meanOf(test, category, ageBand)) / total);
      worse += weight * (protocolOf(test).better === "higher" ? below : 1 - below);
      all += weight;
    }
  }
  return (100 * worse) / all;
}

/** The bundle of a hall's day, as the program writes it: everybody did everything and agreed to share. */
export function bundleOfHall({ athletes }: Hall, seed: number): Uint8Array {
  const draw = normals(seed);
  const candidates = athletes.flatMap(({ category, ageBand, truth }, index) =>
    testCodes.map((test): Candidate => {
      const [variant = ""] = protocolOf(test).variants;
      const leagueSize = leagueSizeOf(athletes.length);
      const value = shown(truth[test], ownVariation[test], draw);
      return {
        ...{ athlete: index, league: 1, test, variant, category, ageBand, leagueSize },
        ...{ quarter: "2026-Q3", consent: "given", mark: { state: "complete", value } },
      };
    }),
  );
  const protocols = testCodes.map((test) => ({ test, parameters: defaultParameters(test) }));
  const facts = { quarter: "2026-Q3", demo: false, rehearsal: false, protocols };
  return bundleOf(candidates, { kind: "marks", k: leastK }, facts).file.bytes;
}
