import { expect, test } from "vitest";
import { fuzzNetwork } from "./fuzz/run.ts";

test("800 requests at random, whole and spoiled, over real sockets leave the table as it was", async () => {
  const { statuses, wrong } = await fuzzNetwork(800, 20_261_114);
  expect(wrong).toEqual([]);
  // They get everywhere: served, refused for want of a device, of a right, of a form; and past what is a request at all.
  for (const status of ["200", "400", "401", "403", "404", "405", "415", "421", "none"]) {
    expect([status, (statuses.get(status) ?? 0) > 0]).toEqual([status, true]);
  }
});
