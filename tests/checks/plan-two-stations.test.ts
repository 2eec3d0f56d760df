import fc from "fast-check";
import { expect, test } from "vitest";
import { decoderOf } from "../../electron/domain/plan/schedule/decode.ts";
import { plainShop } from "../../electron/domain/plan/schedule/shop.ts";
import { type TwoTurns, twoStationOrder } from "../../electron/domain/plan/schedule/two-stations.ts";
import { atOnce, ordersOf } from "./plan-shops.ts";

/**
 * Johnson, S. M. (1954), Optimal two- and three-stage production schedules with setup times included, Naval Research Logistics
 * Quarterly 1(1), and Mitten, L. G. (1959), Sequencing n jobs on two machines with arbitrary time lags, Management Science 5(3):
 * their rules against all orders. (The citations are from memory; what the rules promise is worked out here.)
 */
const time = fc.integer({ min: 0, max: 30 });

/** When two stations are done that take everybody in one order. */
function endOf(turns: readonly TwoTurns[], order: readonly number[]): number {
  let [first, second] = [0, 0];
  for (const at of order) {
    const turn = turns[at] ?? { first: 0, lag: 0, second: 0 };
    first += turn.first;
    second = Math.max(second, first + turn.lag) + turn.second;
  }
  return second;
}

function bestOf(turns: readonly TwoTurns[]): number {
  let best = Number.POSITIVE_INFINITY;
  for (const order of ordersOf([...turns.keys()])) best = Math.min(best, endOf(turns, order));
  return best;
}

test.each([
  ["Johnson: no lag", fc.constant(0)],
  ["Mitten: a lag of each job's own", time],
])("%s, up to 8 jobs: no order ends earlier than the rule's", (_, lag) => {
  const some = fc.array(fc.record({ first: time, lag, second: time }), { minLength: 1, maxLength: 6 });
  const check = (turns: TwoTurns[]) => {
    expect(endOf(turns, twoStationOrder(turns))).toBe(bestOf(turns));
  };
  fc.assert(fc.property(some, check), { numRuns: 150 });
  const eight = fc.array(fc.record({ first: time, lag, second: time }), { minLength: 8, maxLength: 8 });
  fc.assert(fc.property(eight, check), { numRuns: 8 });
});

test("the scheduler works out two stations with rest between as the rule does", () => {
  const some = fc.array(fc.tuple(time, time), { minLength: 1, maxLength: 8 });
  fc.assert(
    fc.property(some, fc.integer({ min: 0, max: 20 }), (rows, rest) => {
      const shop = { ...plainShop([1, 1], rows), rest };
      const turns = rows.map(([first, second]) => ({ first, lag: rest, second }));
      const order = twoStationOrder(turns);
      const [end] = decoderOf(shop, atOnce(2)).run(Int32Array.from(order), rows.length);
      expect(end).toBe(endOf(turns, order));
    }),
  );
});
