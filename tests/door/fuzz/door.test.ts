import { expect, test } from "vitest";
import { procedures } from "./ask.ts";
import { fuzz, newToll } from "./run.ts";

// Seeds of their own: the long form (`npm run fuzz`) makes new ones each time.
const seeds = [20_261_114, 20_270_315, 20_271_009];

test("1,500 calls at random get answers or sentences, and leave the store sound", async () => {
  const toll = newToll();
  for (const seed of seeds) await fuzz(500, seed, toll);
  expect(toll.wrong).toEqual([]);
  expect(toll.calls).toBe(1500);
  // Calls that are all refused would say nothing.
  expect([...toll.answered.values()].reduce((sum, count) => sum + count, 0)).toBeGreaterThan(500);
  expect(toll.answered.size).toBeGreaterThan(procedures.length * 0.6);
  expect(toll.refused.size).toBeGreaterThan(30);
});
