import fc from "fast-check";
import { expect, test } from "vitest";
import { seededChance } from "../../../electron/domain/chance.ts";
import { protectMarks } from "../../../electron/domain/privacy/marks-rule.ts";
import { publish, rowContent } from "../../../electron/domain/privacy/publish.ts";
import { type Candidate, type ReleasedRow, usualStrictness } from "../../../electron/domain/privacy/rule.ts";
import { Refusal } from "../../../electron/domain/refusal.ts";
import { countClasses } from "./counter.ts";
import { halls, leaps } from "./hall.ts";

const protect = (candidates: readonly Candidate[], k = 5) =>
  protectMarks(candidates, { ...usualStrictness, k });

/** Rows as plain text, for the counter that was written apart. */
function textsOf(kept: readonly ReleasedRow[]): Record<string, string>[] {
  return kept.flatMap(({ athlete, quasi, marks }) =>
    marks.map(({ test: code, variant, low, high }) => ({
      ...quasi,
      ...{ test: code, variant, athlete: String(athlete), mark: `${low} to ${high}` },
    })),
  );
}
const known = ["test", "variant", "ageBand", "category", "leagueSize", "quarter"];

/*
 * Ten women of one band: 310 to 350 and 410 to 450 mm, five each. Both ends must hold five, so the lower one ends above 350
 * and at 410 or before, and so the upper one begins. The usual range is 650 mm from 100 to 750. Lines of 20 mm: the lower end
 * 100 to 360 (400 thousandths lost, five times), the upper 400 to 750 (538, five times); nothing lies between. Lines of 50,
 * 100 and 200 mm leave 400 alone: 462 and 538. So 20 mm, below 360 and from 400, with everything else told as it is: the
 * loss is 600 thousandths of (5 × 400 + 5 × 538) ÷ 10 ÷ 1000 = 0.2814.
 */
test("ten leaps in two heaps are told as two ends, worked by hand", () => {
  const { kept, suppressed, decisions } = protect(leaps([310, 320, 330, 340, 350, 410, 420, 430, 440, 450]));
  expect(suppressed).toEqual([]);
  const [decision] = decisions;
  expect(decision?.codings[0]?.coding).toEqual({ step: 20 * 20, below: 360 * 20, from: 400 * 20 });
  expect(decision?.loss).toBeCloseTo(0.2814, 12);
  expect(kept.filter(({ marks: [mark] }) => mark?.low === null && mark.high === 360 * 20)).toHaveLength(5);
  expect(kept.filter(({ marks: [mark] }) => mark?.low === 400 * 20 && mark.high === null)).toHaveLength(5);
  // Two leagues are in it, so that age, category, league size and quarter can all be told.
  expect(decision?.levels).toEqual({ quarter: 0, category: 0, ageBand: 0, leagueSize: 0 });
});

test("nine leaps can't be told: one end would have four", () => {
  const { kept, suppressed } = protect(leaps([310, 320, 330, 340, 350, 410, 420, 430, 440]));
  expect(kept).toEqual([]);
  expect(suppressed).toEqual([
    {
      ...{ reason: "too-few", count: 9, athletes: [0, 1, 2, 3, 4, 5, 6, 7, 8] },
      where: { test: "vertical", variant: "" },
    },
  ]);
});

test("the size of the league stays out where all are of one league", () => {
  const { decisions } = protect(leaps([310, 320, 330, 340, 350, 410, 420, 430, 440, 450], { league: 7 }));
  expect(decisions[0]?.levels).toEqual({ quarter: 0, category: 0, ageBand: 0, leagueSize: 1 });
});

test("one rare mark of twenty-one may be suppressed, and of twenty none of two", () => {
  const heap = (from: number) => Array.from({ length: 10 }, (_none, index) => from + index);
  const alone = leaps([...heap(300), ...heap(420)]);
  const rare: Candidate = { ...(alone[0] as Candidate), athlete: 99, ageBand: "60 to 64" };
  const { kept, suppressed, decisions } = protect([...alone, rare]);
  expect(kept).toHaveLength(20);
  expect(suppressed.map(({ reason, athletes }) => [reason, athletes])).toEqual([["rare", [99]]]);
  expect(decisions[0]?.levels?.ageBand).toBe(0);
  // 2 of 22 are more than 5 %: the ages go instead, and everybody stays in.
  const two = protect([...alone, rare, { ...rare, athlete: 98 }]);
  expect(two.kept).toHaveLength(22);
  expect(two.decisions[0]?.levels?.ageBand).toBe(1);
});

test("whoever may not be shared does not fill an end for the others", () => {
  const [first, ...others] = leaps([310, 320, 330, 340, 350, 410, 420, 430, 440, 450]);
  const { kept, suppressed } = protect([...others, { ...(first as Candidate), consent: "no-share" }]);
  expect(kept).toEqual([]);
  expect(suppressed.map(({ reason, count }) => [reason, count])).toEqual([
    ["no-share", 1],
    ["too-few", 9],
  ]);
});

test("one athlete's second mark of the same test does not fill one either", () => {
  const nine = leaps([310, 320, 330, 340, 350, 410, 420, 430, 440]);
  const again = { ...(nine[0] as Candidate), mark: { state: "complete", value: 450 * 20 } } as const;
  const { kept, suppressed } = protect([...nine, again]);
  expect(kept).toEqual([]);
  expect(suppressed.map(({ reason, count }) => [reason, count])).toEqual([
    ["repeated", 1],
    ["too-few", 9],
  ]);
});

test.each([4, 1, 0, -5, Number.NaN])("k of %d is refused", (k) => {
  expect(() => protect(leaps([300, 310]), k)).toThrow(Refusal);
});

test("every class with its interval has at least k athletes, and each class two intervals", () => {
  let left = 0;
  fc.assert(
    fc.property(halls, fc.constantFrom(5, 6, 11), (candidates, k) => {
      const { kept } = protect(candidates, k);
      if (kept.length === 0) return;
      left += 1;
      const rows = textsOf(kept);
      expect(countClasses(rows, [...known, "mark"], "athlete").k).toBeGreaterThanOrEqual(k);
      const told = countClasses(rows, [...known, "mark"], "athlete");
      expect(told.l).toBe(told.k);
      expect(countClasses(rows, known, "mark").l).toBeGreaterThanOrEqual(2);
    }),
    { numRuns: 60 },
  );
  expect(left).toBeGreaterThan(15);
});

type Told = ReturnType<typeof protect>;

/** What holds of whatever may leave of a day. To work out what may takes nearly all the time, so each day is asked all of it. */
const promises: Readonly<Record<string, (candidates: readonly Candidate[], told: Told) => void>> = {
  "of every table either nothing leaves or at most one in twenty is suppressed": (
    _candidates,
    { decisions, suppressed },
  ) => {
    for (const { able, kept, levels, codings } of decisions) {
      const where = { test: codings[0]?.test, variant: codings[0]?.variant };
      const held = (reason: string) =>
        suppressed.find(
          (one) =>
            one.reason === reason && one.where.test === where.test && one.where.variant === where.variant,
        )?.count ?? 0;
      if (levels === null) expect([kept, held("too-few"), held("rare")]).toEqual([0, able, 0]);
      else {
        expect(held("rare")).toBeLessThanOrEqual(able * 0.05);
        expect([kept + held("rare"), held("too-few")]).toEqual([able, 0]);
      }
    }
  },
  "nobody leaves without consent or a complete mark, and every interval holds the mark of its athlete": (
    candidates,
    { kept },
  ) => {
    for (const { athlete, marks } of kept) {
      for (const { test: code, variant, low, high } of marks) {
        const own = candidates.filter(
          (one) =>
            one.athlete === athlete &&
            one.test === code &&
            one.variant === variant &&
            one.consent === "given" &&
            one.mark.state === "complete" &&
            (low === null || one.mark.value >= low) &&
            (high === null || one.mark.value < high),
        );
        expect(own.length).toBeGreaterThan(0);
        expect([low, high]).not.toEqual([null, null]);
      }
    }
  },
  "the best and the worst of every test are told with one bound, among k others at least": (
    _candidates,
    { kept },
  ) => {
    const marks = kept.flatMap((row) => row.marks);
    for (const alike of Map.groupBy(marks, ({ test: code, variant }) => `${code} ${variant}`).values()) {
      expect(alike.filter(({ low }) => low === null).length).toBeGreaterThanOrEqual(5);
      expect(alike.filter(({ high }) => high === null).length).toBeGreaterThanOrEqual(5);
    }
  },
  "ages are told in their bands or not at all": (_candidates, { kept }) => {
    for (const { quasi } of kept) expect(["20 to 24", "25 to 29", "not told"]).toContain(quasi.ageBand);
  },
  "a size band never stands for one league: two are in whatever else is told": (candidates, { kept }) => {
    const leagueOf = new Map(candidates.map(({ athlete, league }) => [athlete, String(league)]));
    const rows = kept
      .filter(({ quasi }) => quasi.leagueSize !== "not told")
      .flatMap((row) => textsOf([row]).map((text) => ({ ...text, league: leagueOf.get(row.athlete) ?? "" })));
    if (rows.length > 0) expect(countClasses(rows, known, "league").l).toBeGreaterThanOrEqual(2);
  },
  "every mark is either kept or counted once": (candidates, { kept, suppressed }) => {
    const held = suppressed.reduce((sum, { count }) => sum + count, 0);
    expect(kept.length + held).toBe(candidates.length);
    for (const { athletes } of suppressed) expect(new Set(athletes).size).toBe(athletes.length);
  },
};

test("whatever a day holds: what may leave of it keeps every promise", () => {
  fc.assert(
    fc.property(halls, (candidates) => {
      const told = protect(candidates);
      for (const [what, holds] of Object.entries(promises)) {
        try {
          holds(candidates, told);
        } catch (error) {
          throw new Error(`It does not hold that ${what}: ${String(error)}`, { cause: error });
        }
      }
    }),
    { numRuns: 60 },
  );
});

test("the order of the rows and the athletes' ids say nothing: shuffled and renamed, the same rows leave", () => {
  fc.assert(
    fc.property(
      halls.chain((candidates) =>
        fc.tuple(
          fc.constant(candidates),
          fc.shuffledSubarray(candidates, { minLength: candidates.length, maxLength: candidates.length }),
          fc.integer({ min: 1, max: 1000 }),
        ),
      ),
      ([candidates, permuted, step]) => {
        // A mark that comes twice is decided by its own content alone, whoever is asked first.
        const renamed = permuted.map((row) => ({ ...row, athlete: 5000 - row.athlete * step }));
        const published = publish(protect(candidates).kept, seededChance([1, 2, 3, 4]));
        expect(publish(protect(renamed).kept, seededChance([1, 2, 3, 4]))).toEqual(published);
        expect(published.map(rowContent).length).toBe(published.length);
      },
    ),
    { numRuns: 50 },
  );
});
