import fc from "fast-check";
import { expect, test } from "vitest";
import { bundleKinds, ks } from "../../electron/domain/privacy/rule.ts";
import { holdDay, type Named, type Skater, skaters } from "./bundle-hall.ts";
import { testDesk } from "./desk.ts";

/** Years of birth that are in one band in 2026; of who may be under 18 the year says who is asked, and stays. */
const sameBand: Readonly<Record<number, readonly number[]>> = {
  1998: [1997, 1998, 1999, 2000, 2001],
  1999: [1997, 1998, 1999, 2000, 2001],
  1993: [1992, 1993, 1994, 1995, 1996],
  1984: [1982, 1983, 1984, 1985, 1986],
};

const word = fc.string({
  unit: fc.constantFrom(..."abcdefghijklmnopqrstuvwxyzäøşž'-".split("")),
  minLength: 3,
  maxLength: 14,
});
const words = fc.array(word, { minLength: 1, maxLength: 4 }).map((all) => all.join(" "));
const pair = fc.uniqueArray(words, { minLength: 2, maxLength: 2 });
const day: fc.Arbitrary<Named> = fc.record({
  title: words,
  date: fc
    .integer({ min: 0, max: 91 })
    .map((after) => new Date(Date.UTC(2026, 9, 1 + after)).toISOString().slice(0, 10)),
  leagues: pair,
  notes: pair,
  initials: fc.uniqueArray(fc.stringMatching(/^[A-Z]{2,3}$/), { minLength: 2, maxLength: 2 }),
});
const count = skaters.length;
const people: fc.Arbitrary<Skater[]> = fc
  .record({
    names: fc.uniqueArray(words, { minLength: count, maxLength: count }),
    numbers: fc.uniqueArray(fc.stringMatching(/^\d{1,4}$/), { minLength: count, maxLength: count }),
    bibs: fc.uniqueArray(fc.integer({ min: 1, max: 9999 }), { minLength: count, maxLength: count }),
    years: fc.array(fc.nat(), { minLength: count, maxLength: count }),
  })
  .map(({ names, numbers, bibs, years }) =>
    skaters.map((skater, at) => {
      const others = sameBand[skater.birthYear ?? 0];
      const birthYear =
        others === undefined ? skater.birthYear : (others[(years[at] ?? 0) % others.length] ?? null);
      return { ...skater, birthYear, name: names[at] ?? "", number: numbers[at] ?? "", bib: bibs[at] ?? 0 };
    }),
  );

async function bytesOf(who: readonly Skater[], by?: Named): Promise<string[]> {
  const hall = testDesk();
  const dayId = await holdDay(hall, who, undefined, by);
  const made = bundleKinds.flatMap((kind) =>
    ks.map((k) => hall.as("organiser").bundle.preview({ dayId, kind, k })),
  );
  return (await Promise.all(made)).map((preview) => `${preview?.name} ${preview?.sha256}`);
}

/**
 * Stronger than searching for names: whatever anybody, any league or the day is called, whatever number and bib they wear,
 * whatever was noted and by whom, on whatever day of the quarter and in whatever year of the age band, the bundle is the
 * same to the last byte and so is the name of its file. So none of it can be read from any of them, in any form.
 */
test("no identifying value changes a single byte of any bundle", async () => {
  const usual = await bytesOf(skaters);
  await fc.assert(
    fc.asyncProperty(people, day, async (who, by) => {
      expect(await bytesOf(who, by)).toEqual(usual);
    }),
    { numRuns: 25 },
  );
});

test("and what may be said does change it: four athletes more", async () => {
  const usual = await bytesOf(skaters.slice(0, 18));
  const swapped = [skaters[17], ...skaters.slice(1, 17), skaters[0]].filter((one) => one !== undefined);
  // The same people in another order are the same bundle.
  expect(await bytesOf(swapped)).toEqual(usual);
  expect(await bytesOf(skaters.slice(0, 22))).not.toEqual(usual);
});
