import { expect, test } from "vitest";
import { readBundle } from "../../../electron/api/reference/read.ts";
import { testCodes } from "../../../electron/domain/tests/registry.ts";
import { normals } from "../chance.ts";
import { bundleOfHall, hallsOf, ownVariation, shown, truePlace } from "./sport.ts";

// That the invented sport is what it says, before anything is held against it.
test("a true place is the share of the sport's results that are worse", () => {
  const draw = normals(3);
  const everybody = hallsOf(3000, [20, 20], 1).flatMap(({ athletes }) => athletes);
  for (const code of testCodes) {
    const all = everybody.map((each) => ({
      ...each,
      mark: shown(each.truth[code], ownVariation[code], draw),
    }));
    for (const category of ["women", null]) {
      const among = all.filter((each) => category === null || each.category === category);
      for (const { truth } of among.slice(0, 20)) {
        const worse = among.filter(({ mark }) =>
          code === "endurance" ? mark > truth[code] : mark < truth[code],
        ).length;
        const place = truePlace(code, truth[code], ownVariation[code], { category, ageBand: null });
        expect(Math.abs(place - (100 * worse) / among.length)).toBeLessThan(2.5);
      }
    }
  }
});

test("a hall's bundle is one that the program reads", () => {
  const [hall] = hallsOf(1, [60, 60], 5);
  if (hall === undefined) throw new Error("There is no hall.");
  const { marks } = readBundle(bundleOfHall(hall, 7));
  const counted = marks.reduce((sum, { count }) => sum + count, 0);
  expect(counted).toBeGreaterThan(0.9 * 60 * testCodes.length);
});
