import fc from "fast-check";
import { expect, test } from "vitest";
import type { HeatEvent } from "../../../../electron/domain/heats/heat.ts";
import { cadenceAt, msPerRep } from "../../../../electron/domain/tests/push-up/live.ts";
import { pushUp } from "../../../../electron/domain/tests/push-up/protocol.ts";
import { back, laneAfter, tap } from "../../heats/taps.ts";

const rep = 3000;

/** The taps of a volunteer who marks what is off, so many ms after each judging beat. */
function offTaps(cadences: string, late: (cadence: number) => number): HeatEvent[] {
  return [...cadences].flatMap((sign, index) => {
    const cadence = index + 1;
    return sign === "x" ? [tap("off", cadence * rep + late(cadence))] : [];
  });
}

function markOf(events: readonly HeatEvent[]): unknown {
  const { results } = laneAfter("push-up", events);
  return results.length === 0
    ? null
    : pushUp.score(
        pushUp.defaults,
        results.map(({ seen }) => seen),
      );
}

// The rows of the rule (common practice, no source), as a volunteer taps them live.
const rows: [string, string, boolean, number][] = [
  ["20 on, then three off", `${".".repeat(20)}xxx`, false, 20],
  ["10 on, one slip, 5 on, three off", `${".".repeat(10)}x.....xxx`, false, 16],
  ["10 on, one slip, 5 on, two off, stops", `${".".repeat(10)}x.....xx`, true, 16],
  ["three off at once", "xxx", false, 0],
  ["10 on, two off, 1 on, three off", `${".".repeat(10)}xx.xxx`, false, 13],
  ["stops after 12 on", ".".repeat(12), true, 12],
];
const delays = [-700, -1, 0, 600, 1499, 2249];

test.each(rows.flatMap((row) => delays.map((late) => [...row, late] as const)))(
  "%s (%s, stops: %s) makes %i, tapped %i ms after each beat",
  (_name, cadences, stops, value, late) => {
    const events = offTaps(cadences, () => late);
    if (stops) events.push(tap("stop", cadences.length * rep + 2500));
    const lane = laneAfter("push-up", events);
    expect(lane).toMatchObject({ phase: "done", reps: value, idle: [] });
    expect(lane.results).toEqual([{ key: "mark", seen: { how: "cadences", cadences } }]);
    expect(markOf(events)).toEqual({ state: "complete", value });
  },
);

test("whatever is on and off, the taps give the cadences back", () => {
  const runs = fc.stringMatching(/^[.x]{0,60}$/);
  const delay = fc.array(fc.integer({ min: -750, max: 2249 }), { minLength: 60, maxLength: 60 });
  fc.assert(
    fc.property(runs, delay, (cadences, late) => {
      const end = cadences.indexOf("xxx");
      const held = end < 0 ? cadences : cadences.slice(0, end + 3);
      const events = offTaps(held, (cadence) => late[cadence - 1] ?? 0);
      const stop = tap("stop", held.length * rep + 2249);
      const { results } = laneAfter("push-up", [...events, stop]);
      expect(results.map(({ seen }) => seen)).toEqual([{ how: "cadences", cadences: held }]);
    }),
  );
});

test("a lane ends itself at the third miss, and nothing after it counts", () => {
  const taps = offTaps("..xxx", () => 500);
  const later = [tap("off", 6 * rep), tap("on-again", 6 * rep + 1, { cadence: 4 }), tap("stop", 7 * rep)];
  const lane = laneAfter("push-up", [...taps, ...later]);
  expect(lane.results).toEqual([{ key: "mark", seen: { how: "cadences", cadences: "..xxx" } }]);
  expect(lane.idle).toEqual(later.map(({ id }) => id));
});

test("two in a row warn, until the next cadence has had its time", () => {
  const taps = offTaps("..xx", () => 500);
  const seen = (elapsed: number) => {
    const { misses, warning, reps, atHand } = laneAfter("push-up", taps, elapsed);
    return { misses, warning, reps, atHand };
  };
  expect(seen(4 * rep + 500)).toEqual({ misses: 2, warning: true, reps: 2, atHand: 4 });
  // The fifth has come and may still be marked.
  expect(seen(5 * rep + 2249)).toEqual({ misses: 2, warning: true, reps: 5, atHand: 5 });
  expect(seen(5 * rep + 2250)).toEqual({ misses: 0, warning: false, reps: 5, atHand: 6 });
});

test("pressing twice marks once; a mark can be taken off again while the lane goes on", () => {
  const taps = [
    tap("off", rep),
    tap("off", rep + 90),
    tap("off", 2 * rep),
    tap("on-again", 7000, { cadence: 1 }),
  ];
  const lane = laneAfter("push-up", taps, 9000);
  expect(lane).toMatchObject({ cadences: ".x.", phase: "going", idle: [taps[1]?.id] });
});

test("a named cadence is marked later than its beat, never before", () => {
  const taps = [tap("off", 5 * rep, { cadence: 2 }), tap("off", 5 * rep + 1, { cadence: 9 })];
  expect(laneAfter("push-up", taps, 5 * rep + 1)).toMatchObject({ cadences: ".x...", idle: [taps[1]?.id] });
});

test("a third miss filled in between ends the lane there", () => {
  const taps = [...offTaps("..x.x", () => 0), tap("off", 5 * rep + 900, { cadence: 4 })];
  expect(laneAfter("push-up", taps).results).toEqual([
    { key: "mark", seen: { how: "cadences", cadences: "..xxx" } },
  ]);
});

test("a stop counts the beats that have come, or up to the one that is named", () => {
  const seen = (event: HeatEvent) => laneAfter("push-up", [event]).results.map((each) => each.seen);
  expect(seen(tap("stop", 12 * rep + 1250))).toEqual([{ how: "cadences", cadences: "............" }]);
  expect(seen(tap("stop", 12 * rep - 1))).toEqual([{ how: "cadences", cadences: "..........." }]);
  expect(seen(tap("stop", 13 * rep, { cadence: 12 }))).toEqual([
    { how: "cadences", cadences: "............" },
  ]);
  expect(seen(tap("stop", 13 * rep, { cadence: 14 }))).toEqual([]);
  expect(seen(tap("stop", 100))).toEqual([{ how: "cadences", cadences: "" }]);
});

test("the last miss taken back, the lane goes on", () => {
  const taps = offTaps("..xxx", () => 500);
  const [, , third] = taps;
  if (third === undefined) throw new Error("There are three misses.");
  const lane = laneAfter("push-up", [...taps, back(third)], 5 * rep + 1500);
  expect(lane).toMatchObject({ phase: "going", cadences: "..xx.", results: [] });
});

test("nothing counts during the count-in, nor before the start", () => {
  const lane = laneAfter("push-up", [tap("off", -200), tap("stop", -1)], 0);
  expect(lane).toMatchObject({ phase: "going", cadences: "", atHand: 0 });
  expect(lane.idle).toHaveLength(2);
  expect(laneAfter("push-up", [], null).phase).toBe("ready");
});

test("a lane that nobody stops ends nowhere by itself, and never outgrows an attempt", () => {
  const lane = laneAfter("push-up", [], 24 * 3_600_000);
  expect(lane).toMatchObject({ phase: "going", results: [], reps: 400 });
  const [seen] = laneAfter("push-up", [tap("stop", 24 * 3_600_000)]).results;
  expect(pushUp.attempt.safeParse(seen?.seen).success).toBe(true);
});

// Arithmetic: 40 beats a minute, two beats a rep.
test("the tempo is the protocol's", () => {
  expect(msPerRep(pushUp.defaults)).toBe(3000);
  expect(msPerRep({ ...pushUp.defaults, bpm: 50, beatsPerRep: 3 })).toBe(3600);
  expect([2249, 2250, 5249, 5250].map((ms) => cadenceAt(pushUp.defaults, ms))).toEqual([0, 1, 1, 2]);
});

/** Twelve good reps, and the athlete fails on the way up in the thirteenth, whose beat comes at 39 s. */
const beat13 = 13 * rep;

test.each([
  [beat13 - 10, 12, null],
  [beat13, 12, { without: 12, with: 13 }],
  [beat13 + 100, 12, { without: 12, with: 13 }],
  [beat13 + 1249, 12, { without: 12, with: 13 }],
  [beat13 + 1250, 13, null],
])("a stop at %i ms makes %i, and asks %j", (atMs, reps, doubt) => {
  expect(laneAfter("push-up", [tap("stop", atMs)])).toMatchObject({ phase: "done", reps, doubt });
});

test("what is missed right before a stop stays missed: ten on, eleven and twelve off, a stop with the thirteenth", () => {
  const taps = [...offTaps(`${".".repeat(10)}xx`, () => 600), tap("stop", beat13 + 100)];
  const lane = laneAfter("push-up", taps);
  expect(lane).toMatchObject({ reps: 10, doubt: { without: 10, with: 13 } });
  expect(lane.results.map(({ seen }) => seen)).toEqual([
    { how: "cadences", cadences: `${".".repeat(10)}xx` },
  ]);
  expect(markOf(taps)).toEqual({ state: "complete", value: 10 });
  const answer = tap("last", beat13 + 2000, { cadence: 13, done: true });
  expect(markOf([...taps, answer])).toEqual({ state: "complete", value: 13 });
});

test("one answer settles it, either way; a second one, another's and one without a question change nothing", () => {
  const stop = tap("stop", beat13 + 300);
  const answer = (done: boolean, atMs = beat13 + 2000, cadence = 13) => tap("last", atMs, { cadence, done });
  const after = (...more: HeatEvent[]) => {
    const { reps, doubt, idle } = laneAfter("push-up", [stop, ...more]);
    return { reps, doubt, idle: idle.length };
  };
  expect(after(answer(true))).toEqual({ reps: 13, doubt: null, idle: 0 });
  expect(after(answer(false))).toEqual({ reps: 12, doubt: null, idle: 0 });
  expect(after(answer(false), answer(true, beat13 + 2500))).toEqual({ reps: 12, doubt: null, idle: 1 });
  expect(after(answer(true, beat13 + 2000, 12))).toEqual({
    reps: 12,
    doubt: { without: 12, with: 13 },
    idle: 1,
  });
  const yes = answer(true);
  expect(after(yes, back(yes))).toEqual({ reps: 12, doubt: { without: 12, with: 13 }, idle: 0 });
  expect(laneAfter("push-up", [tap("stop", beat13 + 1500), answer(true)])).toMatchObject({
    reps: 13,
    doubt: null,
  });
});

test("a thirteenth that was marked as missed is asked about by nobody", () => {
  const lane = laneAfter("push-up", [tap("off", beat13 + 200), tap("stop", beat13 + 900)]);
  expect(lane).toMatchObject({ reps: 12, doubt: null });
});

test("whoever fails on the way up never gets the rep by the stop, however late within 1.2 s it comes", () => {
  let asked = 0;
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 1499 }),
      fc.integer({ min: 300, max: 1200 }),
      (failed, reaction) => {
        const lane = laneAfter("push-up", [tap("stop", beat13 - 1500 + failed + reaction)]);
        expect(lane.reps).toBe(12);
        if (lane.doubt !== null) asked += 1;
      },
    ),
    { numRuns: 500 },
  );
  // Half of such stops come after the beat.
  expect(asked).toBeGreaterThan(150);
});
