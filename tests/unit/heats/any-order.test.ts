import fc from "fast-check";
import { expect, test } from "vitest";
import { foldHeat, readWhat } from "../../../electron/domain/heats/fold.ts";
import type { HeatEvent } from "../../../electron/domain/heats/heat.ts";
import { protocolOf, type TestCode, testCodes } from "../../../electron/domain/tests/registry.ts";
import { examplesOf } from "../tests/every-test.ts";

const lanes = [1, 2, 3, 4];

/** Taps of four lanes, some of all lanes at once, some taken back; each lane's in the order of time. */
function tapsOf(test: TestCode): fc.Arbitrary<HeatEvent[]> {
  const one = fc.record({
    what: fc.oneof(
      { weight: 12, arbitrary: examplesOf[test].taps },
      fc.tuple(fc.constant("aside"), fc.constant({})) as fc.Arbitrary<[string, unknown]>,
    ),
    lane: fc.oneof({ weight: 9, arbitrary: fc.constantFrom(...lanes) }, fc.constant(null)),
    step: fc.integer({ min: 1, max: 4000 }),
    undone: fc.boolean(),
  });
  return fc.array(one, { maxLength: 60 }).map((all) => {
    let atMs = 0;
    return all.flatMap(({ what: [kind, detail], lane, step, undone }, index) => {
      atMs += step;
      const event: HeatEvent = { id: `tap-${index}`, lane, kind, atMs, detail };
      if (!undone || index % 5 !== 0) return [event];
      atMs += 1;
      return [event, { id: `undo-${index}`, lane, kind: "undo", atMs, detail: { eventId: event.id } }];
    });
  });
}

function stateOf(test: TestCode, events: readonly HeatEvent[], elapsed: number | null = 500_000) {
  const parameters = protocolOf(test).defaults as never;
  const inputs = lanes.map((lane) => ({ lane, prior: [] }));
  return foldHeat(test, parameters, inputs, events, elapsed).map(({ idle, ...lane }) => ({
    ...lane,
    idle: [...idle].sort(),
  }));
}

test.each(testCodes)("%s: in whatever order the taps arrive, every lane is the same", (code) => {
  const shuffled = tapsOf(code).chain((taps) =>
    fc.tuple(fc.constant(taps), fc.shuffledSubarray(taps, { minLength: taps.length })),
  );
  fc.assert(
    fc.property(shuffled, ([taps, arrived]) => {
      expect(stateOf(code, arrived)).toEqual(stateOf(code, taps));
    }),
  );
});

test.each(testCodes)(
  "%s: lanes at the same moment can be told in any order that keeps each lane's own",
  (code) => {
    // Times are cut to whole half minutes, so that many taps share one; then only the order of arrival tells.
    const inOrder = tapsOf(code).map((taps) =>
      taps
        .filter(({ lane, kind }) => lane !== null && kind !== "undo")
        .map((event) => ({ ...event, atMs: Math.floor(event.atMs / 30_000) * 30_000 })),
    );
    fc.assert(
      fc.property(inOrder, fc.array(fc.nat(3), { maxLength: 200 }), (taps, picks) => {
        const waiting = lanes.map((lane) => taps.filter((event) => event.lane === lane));
        const merged: HeatEvent[] = [];
        for (const pick of picks) {
          const [next] = waiting[pick]?.splice(0, 1) ?? [];
          if (next !== undefined) merged.push(next);
        }
        merged.push(...waiting.flat());
        expect(stateOf(code, merged)).toEqual(stateOf(code, taps));
      }),
    );
  },
);

test.each(testCodes)("%s: what came out does not depend on when one looks", (code) => {
  fc.assert(
    fc.property(tapsOf(code), fc.integer({ min: -6000, max: 9_000_000 }), (taps, elapsed) => {
      const results = (at: number | null) => stateOf(code, taps, at).map((lane) => lane.results);
      expect(results(elapsed)).toEqual(results(null));
    }),
  );
});

test.each(testCodes)("%s: every result is an attempt of the test", (code) => {
  fc.assert(
    fc.property(tapsOf(code), (taps) => {
      for (const { results } of stateOf(code, taps)) {
        for (const { seen } of results) expect(protocolOf(code).attempt.parse(seen)).toEqual(seen);
      }
    }),
  );
});

test.each(testCodes)("%s: the taps of these tests are taps that the door takes", (code) => {
  fc.assert(
    fc.property(tapsOf(code), (taps) => {
      for (const { kind, detail } of taps) expect(readWhat(code, { kind, detail })).toEqual({ kind, detail });
    }),
  );
});

test("what no test knows is no tap", () => {
  expect(readWhat("core", { kind: "round", detail: {} })).toBeNull();
  expect(readWhat("push-up", { kind: "off", detail: { cadence: 0 } })).toBeNull();
  expect(readWhat("agility", { kind: "rerun", detail: { direction: "cw", reason: " " } })).toBeNull();
});
