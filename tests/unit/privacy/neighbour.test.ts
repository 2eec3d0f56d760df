import fc from "fast-check";
import { expect, test } from "vitest";
import { seededChance } from "../../../electron/domain/chance.ts";
import { sortOut } from "../../../electron/domain/privacy/able.ts";
import {
  playNeighbour,
  type Sighting,
  sightingsOf,
  unprotectedRows,
} from "../../../electron/domain/privacy/neighbour.ts";
import { protect } from "../../../electron/domain/privacy/protect.ts";
import { type PublishedRow, publish } from "../../../electron/domain/privacy/publish.ts";
import { bundleKinds, usualStrictness } from "../../../electron/domain/privacy/rule.ts";
import { halls, heaps, leaps } from "./hall.ts";

const quasi = { ageBand: "25 to 29", category: "women", leagueSize: "15 to 29", quarter: "2026-Q4" };
const unlinked = { k: 5, linked: false };

function bib(who: number, value: number, more: Partial<Sighting["quasi"]> = {}): Sighting {
  return {
    ...{ who, hidden: false, quasi: { ...quasi, ...more } },
    marks: [{ test: "vertical", variant: "", value }],
  };
}

function row(
  low: number | null,
  high: number | null,
  more: Partial<PublishedRow["quasi"]> = {},
): PublishedRow {
  return { id: "", quasi: { ...quasi, ...more }, marks: [{ test: "vertical", variant: "", low, high }] };
}

test("bib 27 jumped 46 cm: in a file of exact marks she is found for certain", () => {
  const hall = [bib(27, 460), bib(28, 440), bib(29, 430)];
  const rows = [row(460, 461), row(440, 441), row(430, 431)];
  expect(playNeighbour(rows, hall, unlinked)).toEqual({
    ...{ bibs: 3, certain: 3, exposed: 3, largest: 1, expected: 1 },
  });
});

test("among five told alike each guess is right once in five", () => {
  const hall = [410, 420, 430, 440, 460].map((value, who) => bib(who, value));
  const attack = playNeighbour(
    Array.from({ length: 5 }, () => row(400, 500)),
    hall,
    unlinked,
  );
  expect(attack).toMatchObject({ bibs: 5, certain: 0, exposed: 0, largest: 0.2 });
  expect(attack.expected).toBeCloseTo(0.2, 12);
});

test("four rows alike, or five rows that only four bibs fit, are found out", () => {
  const hall = [410, 420, 430, 440, 310].map((value, who) => bib(who, value));
  expect(
    playNeighbour(
      Array.from({ length: 4 }, () => row(400, 500)),
      hall,
      unlinked,
    ),
  ).toMatchObject({
    ...{ certain: 0, exposed: 4, largest: 0.25 },
  });
  // One of the five rows is of nobody in the hall: the neighbour does not care.
  expect(
    playNeighbour(
      Array.from({ length: 5 }, () => row(400, 500)),
      hall,
      unlinked,
    ),
  ).toMatchObject({
    ...{ exposed: 4, largest: 0.25 },
  });
});

test("a row that fits one bib alone is found, though many rows fit that bib", () => {
  const hall = [
    bib(1, 460, { ageBand: "40 to 44" }),
    ...[410, 420, 430, 440, 450].map((value, who) => bib(2 + who, value)),
  ];
  const rows = [
    ...Array.from({ length: 5 }, () => row(400, 500, { ageBand: "not told" })),
    row(400, 500, { ageBand: "40 to 44" }),
  ];
  expect(playNeighbour(rows, hall, unlinked)).toMatchObject({ certain: 1, exposed: 1, largest: 1 });
});

test("bounds: a mark on the lower one is in, on the upper one is out; an end has one", () => {
  const fits = (value: number, low: number | null, high: number | null) =>
    playNeighbour([row(low, high)], [bib(1, value)], unlinked).largest === 1;
  expect([fits(400, 400, 500), fits(500, 400, 500), fits(399, 400, 500)]).toEqual([true, false, false]);
  expect([fits(0, null, 300), fits(300, null, 300), fits(900, 500, null)]).toEqual([true, false, true]);
});

test("a linked profile without a plank is not of somebody who did one", () => {
  const plank = { test: "core", variant: "", value: 90 } as const;
  const both = { ...bib(1, 460), marks: [...bib(1, 460).marks, plank] };
  const told = { ...row(400, 500), marks: [...row(400, 500).marks, { ...plank, low: 60, high: 120 }] };
  expect(playNeighbour([row(400, 500), told], [both], { k: 5, linked: true })).toMatchObject({ certain: 1 });
  expect(
    playNeighbour([row(400, 500), row(400, 500)], [both, bib(2, 470)], { k: 5, linked: true }),
  ).toMatchObject({
    ...{ certain: 0, largest: 0.5 },
  });
});

test.each(bundleKinds)(
  "of what the rule lets leave as %s, nobody is found likelier than one in k",
  (kind) => {
    let left = 0;
    fc.assert(
      fc.property(kind === "marks" ? halls : heaps, fc.constantFrom(5, 5, 5, 11), (candidates, k) => {
        const { kept, able } = protect(kind, candidates, { ...usualStrictness, k });
        const linked = kind === "profiles";
        const rows = publish(kept, seededChance([9, 8, 7, 6]));
        const after = playNeighbour(rows, sightingsOf(able), { k, linked });
        expect(after).toMatchObject({ certain: 0, exposed: 0 });
        expect(after.largest).toBeLessThanOrEqual(1 / k + 1e-12);
        if (rows.length > 0) left += 1;
      }),
      { numRuns: 150 },
    );
    expect(left).toBeGreaterThan(3);
  },
);

test("without the rule nearly everybody is", () => {
  const { able } = sortOut(leaps(Array.from({ length: 30 }, (_none, index) => 300 + 7 * index)));
  const before = playNeighbour(unprotectedRows(able, false), sightingsOf(able), unlinked);
  expect(before).toEqual({ bibs: 30, certain: 30, exposed: 30, largest: 1, expected: 1 });
});
