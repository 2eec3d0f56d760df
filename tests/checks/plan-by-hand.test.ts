import fc from "fast-check";
import { expect, test } from "vitest";
import { decoderOf } from "../../electron/domain/plan/schedule/decode.ts";
import { plainShop, type Shop } from "../../electron/domain/plan/schedule/shop.ts";
import { atOnce, listed } from "./plan-shops.ts";

/** What can be worked out by hand (arithmetic, no source): everybody alike, everybody there at the start. */
function endOf(shop: Shop): number {
  const [end] = decoderOf(shop, atOnce(shop.stages)).run(listed(shop.jobs), shop.jobs);
  return end ?? Number.NaN;
}

function alike(athletes: number, stations: number, time: number): Shop {
  const rows = Array.from({ length: athletes }, () => Array.from({ length: stations }, () => time));
  return plainShop(rows[0]?.map(() => 1) ?? [], rows);
}

test("49 athletes, 5 stations of 2.6 minutes, rest 5: 157.8 minutes", () => {
  const shop = { ...alike(49, 5, 2.6 * 60), rest: 5 * 60 };
  expect(endOf(shop) / 60).toBeCloseTo(157.8, 9);
});

test("n athletes, m stations of p with one place each, rest r: (n + m - 1) p + (m - 1) r", () => {
  const small = fc.integer({ min: 1, max: 12 });
  fc.assert(
    fc.property(small, small, small, fc.integer({ min: 0, max: 20 }), (n, m, p, r) => {
      expect(endOf({ ...alike(n, m, p), rest: r })).toBe((n + m - 1) * p + (m - 1) * r);
    }),
  );
});

test("a station of heats alone: ceil(n / lanes) heats, each as long as its slowest, and the change-over between", () => {
  const small = fc.integer({ min: 1, max: 30 });
  fc.assert(
    fc.property(small, small, small, fc.integer({ min: 0, max: 9 }), (n, lanes, slowest, changeOver) => {
      const shop: Shop = {
        ...alike(n, 1, slowest),
        lanes: Int32Array.of(lanes),
        changeOver: Float64Array.of(changeOver),
      };
      // After the last heat nobody waits for the place.
      expect(endOf(shop) + changeOver).toBe(Math.ceil(n / lanes) * (slowest + changeOver));
    }),
  );
});
