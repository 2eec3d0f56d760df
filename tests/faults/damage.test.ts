import { expect, test } from "vitest";
import { damaged } from "./damage.ts";
import { cutInCheckpoint } from "./mid-checkpoint.ts";
import { damagedTwice } from "./twice-damaged.ts";

test("a damaged store is opened as it was or refused, and then repaired from its backup", async () => {
  const toll = await damaged(60, 71);
  expect(toll.wrong).toEqual([]);
  const refused = Object.values(toll.refused).reduce((sum, count) => sum + count, 0);
  expect(toll.opened + refused).toBe(60);
  // Every kind of notice was needed: SQLite's own checks alone would have let some through.
  for (const reason of ["damaged", "changed", "shortened"]) expect(toll.refused[reason]).toBeGreaterThan(0);
});

test("with two of its files damaged a store is opened as it was or refused untouched, and never as a new one", {
  timeout: 120_000,
}, () => {
  const toll = damagedTwice(45, 81);
  expect(toll.wrong).toEqual([]);
  const refused = Object.values(toll.refused).reduce((sum, count) => sum + count, 0);
  expect(toll.opened + refused).toBe(45);
  for (const reason of ["gone", "changed", "shortened"]) expect(toll.refused[reason]).toBeGreaterThan(0);
});

test("a store that was killed in a checkpoint opens as it was, and one flipped bit in it is noticed", {
  timeout: 120_000,
}, () => {
  expect(cutInCheckpoint(20, 91, false)).toEqual({ opened: 20, refused: {}, wrong: [] });
  const toll = cutInCheckpoint(30, 92, true);
  expect(toll.wrong).toEqual([]);
  expect(toll.refused.changed).toBeGreaterThan(0);
});
