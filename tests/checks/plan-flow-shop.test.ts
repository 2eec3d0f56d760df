import { expect, test } from "vitest";
import { seededChance } from "../../electron/domain/chance.ts";
import { boundOf } from "../../electron/domain/plan/schedule/bound.ts";
import { decoderOf } from "../../electron/domain/plan/schedule/decode.ts";
import { insertionOf } from "../../electron/domain/plan/schedule/insertion.ts";
import { longestFirst } from "../../electron/domain/plan/schedule/rules.ts";
import { search } from "../../electron/domain/plan/schedule/search.ts";
import { plainShop } from "../../electron/domain/plan/schedule/shop.ts";
import { atOnce, listed } from "./plan-shops.ts";
import { bestOrders, flowShops, insertedFirst, rowsOf } from "./taillard.ts";

const one = [1, 1, 1, 1, 1];

test.each(flowShops)("$name: listed $listed, by insertion $insertion, best $best", (shop) => {
  const rows = rowsOf(shop.seed);
  expect(rows.flat().reduce((sum, time) => sum + time, 0)).toBe(shop.sum);
  const plain = plainShop(one, rows);
  // The published bound is the most of the machines' own bounds and of the longest job, as ours is.
  expect(boundOf(plain)).toBe(shop.bound);
  const decoder = decoderOf(plain, atOnce(5));
  const endOf = (order: Int32Array) => decoder.run(order, 20)[0];
  expect(endOf(listed(20))).toBe(shop.listed);
  expect(endOf(inOrder(bestOrders[shop.name] ?? []))).toBe(shop.best);
  expect(endOf(byInsertion(plain))).toBe(shop.insertion);
});

test("the insertion rule gives ta001 the order that it is known for", () => {
  const [first] = flowShops;
  expect(byInsertion(plainShop(one, rowsOf(first.seed)))).toEqual(inOrder(insertedFirst));
});

test.each(flowShops)("$name: the search ends within 1.5 % of $best, and not below it", ({ seed, best }) => {
  const plain = plainShop(one, rowsOf(seed));
  const searching = {
    calling: atOnce(5),
    random: seededChance([1, 2, 3, 4]),
    evaluations: 30_000,
    bound: best,
  };
  const end = [...search(plain, searching)].at(-1)?.end ?? 0;
  expect(end).toBeGreaterThanOrEqual(best);
  expect(end / best).toBeLessThanOrEqual(1.015);
});

function inOrder(numbers: readonly number[]): Int32Array {
  return Int32Array.from(numbers, (number) => number - 1);
}

/** NEH as it is published: equal ends are equal, and the first of equal places is taken. */
function byInsertion(shop: ReturnType<typeof plainShop>): Int32Array {
  const decoder = decoderOf(shop, atOnce(5));
  const endAlone = {
    ...decoder,
    run: (...args: Parameters<typeof decoder.run>) => decoder.run(...args).with(1, 0),
  };
  return insertionOf(20, endAlone, () => 1).insertAll(longestFirst(shop));
}
