import { expect, test } from "vitest";
import { damaged } from "./damage.ts";

test("a damaged store is opened as it was or refused, and then repaired from its backup", {
  timeout: 120_000,
}, async () => {
  const toll = await damaged(60, 71);
  expect(toll.wrong).toEqual([]);
  const refused = Object.values(toll.refused).reduce((sum, count) => sum + count, 0);
  expect(toll.opened + refused).toBe(60);
  // Every kind of notice was needed: SQLite's own checks alone would have let some through.
  for (const reason of ["damaged", "changed", "shortened"]) expect(toll.refused[reason]).toBeGreaterThan(0);
});
