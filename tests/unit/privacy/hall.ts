import fc from "fast-check";
import { leagueSizes } from "../../../electron/domain/privacy/quasi.ts";
import type { Candidate } from "../../../electron/domain/privacy/rule.ts";
import type { Mark } from "../../../electron/domain/tests/protocol.ts";
import type { TestCode } from "../../../electron/domain/tests/registry.ts";

const person = fc.record({
  ageBand: fc.constantFrom("20 to 24", "25 to 29"),
  category: fc.constantFrom("women" as const, "unknown" as const),
  league: fc.nat(3),
  consent: fc.oneof(
    { weight: 12, arbitrary: fc.constant("given" as const) },
    { weight: 1, arbitrary: fc.constant("no-share" as const) },
    { weight: 1, arbitrary: fc.constant("no-guardian" as const) },
  ),
});

const mark: fc.Arbitrary<Mark> = fc.oneof(
  { weight: 10, arbitrary: fc.record({ state: fc.constant("complete" as const), value: fc.nat(60) }) },
  { weight: 1, arbitrary: fc.constant<Mark>({ state: "incomplete", missing: ["cw"] }) },
  { weight: 1, arbitrary: fc.constant<Mark>({ state: "unfinished", rounds: 1, reps: 2 }) },
);

const tables: readonly { readonly test: TestCode; readonly variant: string; readonly grains: number }[] = [
  { test: "vertical", variant: "", grains: 200 },
  { test: "push-up", variant: "full", grains: 1 },
  { test: "push-up", variant: "knee", grains: 1 },
  { test: "core", variant: "", grains: 6 },
];

/** The marks of one invented day: up to sixty people, each alike in all its rows; now and then a mark twice. */
export const halls: fc.Arbitrary<Candidate[]> = fc
  .tuple(
    fc.array(person, { minLength: 1, maxLength: 60, size: "max" }),
    fc.array(fc.record({ who: fc.nat(), table: fc.nat(tables.length - 1), mark }), { maxLength: 30 }),
    fc.array(mark, { minLength: 240, maxLength: 240 }),
    fc.array(fc.boolean(), { minLength: 240, maxLength: 240 }),
  )
  .map(([people, again, marks, does]) => {
    const usual = people.flatMap((_person, who) =>
      tables.flatMap((_table, table) => {
        const found = marks[who * tables.length + table];
        const here = table === 0 || does[who * tables.length + table] === true;
        return found === undefined || !here ? [] : [{ who, table, mark: found }];
      }),
    );
    return [...usual, ...again].flatMap((each) => {
      const athlete = each.who % people.length;
      const found = people[athlete];
      const table = tables[each.table];
      return found === undefined || table === undefined
        ? []
        : [candidateOf(athlete, found, table, each.mark)];
    });
  });

function candidateOf(
  athlete: number,
  { league, ...who }: Pick<Candidate, "ageBand" | "category" | "consent" | "league">,
  { test, variant, grains }: (typeof tables)[number],
  found: Mark,
): Candidate {
  const leagueSize = leagueSizes[league % 2] ?? "up to 14";
  const told: Mark = found.state === "complete" ? { ...found, value: found.value * grains } : found;
  return { athlete, league, leagueSize, ...who, test, variant, quarter: "2026-Q4", mark: told };
}

/** One leap of each given height (mm; another test: grains), by athletes alike in everything else. */
export function leaps(heights: readonly number[], more: Partial<Candidate> = {}): Candidate[] {
  return heights.map((value, athlete) => ({
    ...{ athlete, league: athlete % 2, leagueSize: "15 to 29", ageBand: "25 to 29", category: "women" },
    ...{ test: "vertical", variant: "", quarter: "2026-Q4", consent: "given" },
    mark: { state: "complete", value: more.test === undefined ? 20 * value : value },
    ...more,
  }));
}

/** Days of two tests whose marks come in two heaps each, as linked profiles need: twenty to sixty people. */
export const heaps: fc.Arbitrary<Candidate[]> = fc
  .array(
    fc.record({
      ...{ leap: fc.integer({ min: 0, max: 40 }), plank: fc.integer({ min: 0, max: 20 }) },
      ...{ high: fc.boolean(), long: fc.boolean(), young: fc.boolean(), plankDone: fc.nat(12) },
    }),
    { minLength: 20, maxLength: 60, size: "max" },
  )
  .map((people) =>
    people.flatMap(({ leap, plank, high, long, young, plankDone }, athlete) => {
      const more = { athlete, ageBand: young ? "20 to 24" : "25 to 29", league: athlete % 3 };
      const [jumped] = leaps([leap + (high ? 410 : 300)], more);
      const [held] = leaps([plank + (long ? 150 : 60)], { ...more, test: "core" });
      return [jumped, plankDone === 0 ? undefined : held].filter((one) => one !== undefined);
    }),
  );
