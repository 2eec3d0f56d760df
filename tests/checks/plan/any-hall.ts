import fc from "fast-check";
import { seededChance } from "../../../electron/domain/chance.ts";
import { type Draws, draw, plainDraws } from "../../../electron/domain/plan/draws.ts";
import type { Athlete, Hall, Station } from "../../../electron/domain/plan/hall.ts";
import { testCodes } from "../../../electron/domain/tests/registry.ts";

const spread = fc.record({
  median: fc.integer({ min: 5, max: 400 }),
  sigma: fc.constantFrom(0, 0.2, 0.6),
});

const stations = fc
  .tuple(...testCodes.map((test) => stationOf(test)))
  .chain((all) => fc.subarray<Station>(all, { minLength: 1 }));

function stationOf(test: Station["test"]): fc.Arbitrary<Station> {
  const [places, lanes] = [fc.integer({ min: 1, max: 3 }), fc.integer({ min: 1, max: 4 })];
  return fc.record({ test: fc.constant(test), places, lanes, turn: spread, changeOver: spread });
}

const window = fc
  .tuple(fc.integer({ min: -600, max: 3600 }), fc.integer({ min: 0, max: 1800 }))
  .map(([from, long]) => ({ from, until: from + long }));

function athleteOf(id: number): fc.Arbitrary<Athlete> {
  return fc.record({
    id: fc.constant(id),
    league: fc.constantFrom("Ours", "Theirs"),
    arrives: window,
    comes: fc.constantFrom(1, 0.6),
    left: fc.subarray([...testCodes], { minLength: 1 }),
    rested: fc.integer({ min: -600, max: 600 }),
  });
}

/** Any small hall, with anybody in it and any chance. */
export const anyHall = fc.record({
  hall: fc.record({
    stations,
    judges: fc.option(fc.integer({ min: 1, max: 4 })),
    rest: fc.constantFrom(0, 180, 300),
    breaks: fc.array(window, { maxLength: 2 }),
    middleIsFree: fc.boolean(),
  }),
  athletes: fc
    .integer({ min: 1, max: 16 })
    .chain((count) => fc.tuple(...Array.from({ length: count }, (_none, id) => athleteOf(id)))),
  seed: fc.integer({ min: 1, max: 1_000_000 }),
  patience: fc.integer({ min: 0, max: 300 }),
});

/** Returns chance of a seed for a hall, with one patience at all stations and pauses at some. */
export function chanceOf(hall: Hall, athletes: readonly Athlete[], seed: number, patience: number): Draws {
  const draws = plainDraws(athletes.length, hall.stations.length);
  const random = seededChance([seed, 2, 3, 4]);
  draw(draws, random);
  draws.patience.fill(patience);
  for (const station of hall.stations.keys()) {
    draws.pauseFrom[station] = random() * 3600;
    draws.pauseFor[station] = random() * 600;
  }
  return draws;
}
