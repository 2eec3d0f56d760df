import { expect, test } from "vitest";
import { seededChance } from "../../electron/domain/chance.ts";
import { boundOf } from "../../electron/domain/plan/schedule/bound.ts";
import { search } from "../../electron/domain/plan/schedule/search.ts";
import { plainShop } from "../../electron/domain/plan/schedule/shop.ts";
import { type Instance, instances, stageBound } from "./instances.ts";
import { atOnce } from "./plan-shops.ts";

/**
 * Five published hybrid flow shops of 50 jobs, 5 stages and 3 places each, with the best makespans that are known (their source:
 * instances/README.md). So many orders are tried here, and not for so many seconds; `npm run bench -- plan` tries for 15 s.
 */
const orders = 25_000;

test.each(instances)("instance $number: best $best, bound $bound", (instance) => {
  const shop = plainShop(instance.places, instance.rows);
  expect(stageBound(instance)).toBe(instance.bound);
  expect(Math.ceil(boundOf(shop) - 1e-9)).toBe(instance.bound);
  const searching = { calling: atOnce(5), random: seededChance([1, 2, 3, 4]), evaluations: orders, bound: 0 };
  const found = [...search(shop, searching)].at(-1);
  if (found === undefined) throw new Error("Nothing was found.");
  const { starts, places, end } = found.schedule();
  expect(found.end).toBe(end);
  expectToBeRunnable(instance, starts, places, end);
  expect(end).toBeGreaterThanOrEqual(instance.bound);
  expect(end / instance.best).toBeLessThanOrEqual(1.03);
});

/** Looks at every turn: after the job's one before, after the one before at its place, and none after the end. */
function expectToBeRunnable(
  { rows, places }: Instance,
  starts: Float64Array,
  placeOf: Int32Array,
  end: number,
): void {
  const turns = rows.flatMap((row, job) =>
    row.map((time, stage) => {
      const [from, place] = [starts[job * row.length + stage] ?? -1, placeOf[job * row.length + stage] ?? -1];
      return { job, stage, place, from, until: from + time };
    }),
  );
  for (const one of turns) {
    expect(one.from).toBeGreaterThanOrEqual(0);
    expect(one.place).toBeGreaterThanOrEqual(0);
    expect(one.place).toBeLessThan(places[one.stage] ?? 0);
    const clash = turns.filter(
      (other) =>
        (other.job === one.job && other.stage < one.stage && other.until > one.from) ||
        (other.job !== one.job &&
          other.stage === one.stage &&
          other.place === one.place &&
          other.from < one.until &&
          one.from < other.until),
    );
    expect(clash).toEqual([]);
  }
  expect(Math.max(...turns.map(({ until }) => until))).toBe(end);
}
