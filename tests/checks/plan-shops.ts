import fc from "fast-check";
import type { Calling } from "../../electron/domain/plan/schedule/bench.ts";
import type { Shop } from "../../electron/domain/plan/schedule/shop.ts";

/** How large halls at random are. */
interface Size {
  readonly jobs: number;
  readonly stages: number;
  readonly places: number;
  readonly lanes: number;
}

/** Halls at random with all that a hall has: heats, change-over, rest, arrivals, breaks, judges, tests left out. */
export function shops({ jobs, stages, places, lanes }: Size): fc.Arbitrary<Shop> {
  const time = fc.integer({ min: 5, max: 90 });
  const some = { minLength: stages, maxLength: stages };
  // One test in eight is left out.
  const times = fc.array(
    fc.oneof({ weight: 7, arbitrary: time }, { weight: 1, arbitrary: fc.constant(-1) }),
    some,
  );
  return fc
    .record({
      rows: fc.array(fc.record({ times, release: fc.integer({ min: 0, max: 200 }) }), { maxLength: jobs }),
      places: fc.array(fc.integer({ min: 1, max: places }), some),
      lanes: fc.array(fc.integer({ min: 1, max: lanes }), some),
      changeOver: fc.array(fc.integer({ min: 0, max: 20 }), some),
      rest: fc.constantFrom(0, 30, 120),
      breaks: fc.constantFrom([], [100, 160], [0, 50, 90, 200]),
      judges: fc.integer({ min: 0, max: stages }),
    })
    .map(({ rows, ...shop }) => ({
      ...{ jobs: rows.length, stages, rest: shop.rest, judges: shop.judges },
      places: Int32Array.from(shop.places),
      lanes: Int32Array.from(shop.lanes),
      changeOver: Float64Array.from(shop.changeOver),
      times: Float64Array.from(rows.flatMap((row) => row.times)),
      release: Float64Array.from(rows, ({ release }) => release),
      breaks: Float64Array.from(shop.breaks),
    }));
}

/** Ways of calling at random, for halls of so many stages. */
export function callings(stages: number): fc.Arbitrary<Calling> {
  return fc.record({
    byOrder: fc.boolean(),
    patience: fc
      .array(fc.constantFrom(0, 10, 60, Number.POSITIVE_INFINITY), { minLength: stages, maxLength: stages })
      .map((values) => Float64Array.from(values)),
  });
}

/** A calling without waiting. */
export function atOnce(stages: number, byOrder = true): Calling {
  return { byOrder, patience: new Float64Array(stages) };
}

/** The numbers from 0, in their order. */
export function listed(count: number): Int32Array {
  return Int32Array.from({ length: count }, (_, at) => at);
}

/** Every order of some numbers. */
export function* ordersOf(values: readonly number[]): Generator<number[]> {
  if (values.length < 2) yield [...values];
  else
    for (const [at, first] of values.entries())
      for (const rest of ordersOf(values.toSpliced(at, 1))) yield [first, ...rest];
}
