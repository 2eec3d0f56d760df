import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readKeyed, retype } from "../../../electron/domain/keyed/keyed.ts";
import type { TestCode } from "../../../electron/domain/tests/registry.ts";
import { parseAttempt, protocols } from "../../../electron/domain/tests/registry.ts";
import { sentence } from "../../../electron/domain/words.ts";
import { cm, inches } from "../../lengths.ts";

function errorsOf(code: TestCode, typed: Record<string, string>, lengths: "cm" | "in" = "cm") {
  const keyed = readKeyed(code, protocols[code].defaults, typed, lengths);
  return "errors" in keyed
    ? Object.fromEntries(Object.entries(keyed.errors).map(([name, { key }]) => [name, key]))
    : {};
}

describe("what people type at each station becomes what was seen", () => {
  test.each([
    ["push-up", { reps: "23", offAtEnd: "3" }, [{ how: "tally", reps: 23, offAtEnd: 3 }]],
    [
      "agility",
      { direction: "ccw", laps: "7", extra: "3", touches: "0" },
      [{ direction: "ccw", laps: 7, extra: 3, touches: 0 }],
    ],
    [
      "vertical",
      { standingReach: "219", touch1: "260", touch3: "262.5" },
      [
        { standingReach: cm(219), touchReach: cm(260) },
        { standingReach: cm(219), touchReach: cm(262.5) },
      ],
    ],
    [
      "vertical",
      { standingReach: "219", touch1: "260", bodyMass: "68.5" },
      [{ standingReach: cm(219), touchReach: cm(260), bodyMass: 68_500 }],
    ],
    ["core", { time: "3:21" }, [{ held: 201_000 }]],
    ["core", { time: "95" }, [{ held: 95_000 }]],
    ["endurance", { time: "6:12.4" }, [{ finished: true, time: 372_400 }]],
    [
      "endurance",
      { finished: "no", time: "6:12.4", roundsDone: "2", repsDone: "31" },
      [{ finished: false, roundsDone: 2, repsDone: 31 }],
    ],
  ] as const)("%s %j", (code, typed, seen) => {
    expect(readKeyed(code, protocols[code].defaults, typed, "cm")).toEqual({ seen });
    for (const each of seen) expect(parseAttempt(code, each).success).toBe(true);
  });

  test("inches in every way people write them", () => {
    const typed = { standingReach: `7' 2 1/2"`, touch1: `86.5"`, touch2: "102 3/4", bodyMass: "150" };
    // 150 lb = 68,038.8555 g (international yard and pound agreement, 1959).
    expect(readKeyed("vertical", protocols.vertical.defaults, typed, "in")).toEqual({
      seen: [
        { standingReach: inches(86.5), touchReach: inches(86.5), bodyMass: 68_039 },
        { standingReach: inches(86.5), touchReach: inches(102.75), bodyMass: 68_039 },
      ],
    });
  });
});

describe("what can't be read says so at its field, and nothing is made of the rest", () => {
  test.each([
    ["push-up", {}, { reps: "units.count.empty", offAtEnd: "units.count.empty" }],
    ["push-up", { reps: "1,5", offAtEnd: "0" }, { reps: "units.count.whole" }],
    ["push-up", { reps: "-1", offAtEnd: "0" }, { reps: "units.count.whole" }],
    ["push-up", { reps: "NaN", offAtEnd: "0" }, { reps: "units.count.whole" }],
    ["push-up", { reps: "1e9", offAtEnd: "0" }, { reps: "units.count.whole" }],
    ["push-up", { reps: "1000000000", offAtEnd: "0" }, { reps: "units.count.tooLong" }],
    ["push-up", { reps: "20", offAtEnd: "4" }, { offAtEnd: "test.push-up.keyed.offAtEnd" }],
    [
      "agility",
      { direction: "cw", laps: "31", extra: "4", touches: "0" },
      { extra: "test.agility.keyed.extra" },
    ],
    [
      "vertical",
      { standingReach: "", touch1: "" },
      { standingReach: "units.length.empty", touch1: "units.length.empty" },
    ],
    ["vertical", { standingReach: "219", touch2: `86.5"` }, { touch2: "units.length.notInches" }],
    ["vertical", { standingReach: "219", touch1: "260", bodyMass: "1.068,5" }, { bodyMass: "units.comma" }],
    ["core", { time: "3.00" }, { time: "units.time.ambiguous" }],
    ["core", { time: "1:75" }, { time: "units.time.sixty" }],
    ["endurance", { time: "" }, { time: "units.time.empty" }],
    ["endurance", { finished: "no", repsDone: "2" }, { roundsDone: "units.count.empty" }],
  ] as const)("%s %j", (code, typed, errors) => {
    expect(errorsOf(code, typed)).toEqual(errors);
  });

  test.each([1, 2, 3])(
    "the missed reps at the end are the day's to limit: %i end the test",
    (missesToStop) => {
      const parameters = { ...protocols["push-up"].defaults, missesToStop };
      const read = (offAtEnd: number) =>
        readKeyed("push-up", parameters, { reps: "20", offAtEnd: String(offAtEnd) }, "cm");
      expect(read(missesToStop)).toEqual({ seen: [{ how: "tally", reps: 20, offAtEnd: missesToStop }] });
      const said = sentence("test.push-up.keyed.offAtEnd", { count: missesToStop });
      expect(read(missesToStop + 1)).toEqual({ errors: { offAtEnd: said } });
    },
  );
});

describe("an attempt typed out again reads as the same attempt", () => {
  function same(code: TestCode, seen: unknown, lengths: "cm" | "in" = "cm") {
    const again = retype(code, seen, lengths);
    expect(readKeyed(code, protocols[code].defaults, again.typed, again.lengths)).toEqual({ seen: [seen] });
  }

  test("counts and times, of any value", () => {
    fc.assert(
      fc.property(fc.nat(996), fc.nat(3), fc.nat(86_399_999), fc.boolean(), (count, few, ms, clockwise) => {
        same("push-up", { how: "tally", reps: count + 3, offAtEnd: few });
        const direction = clockwise ? "cw" : "ccw";
        same("agility", { direction, laps: count % 100, extra: few, touches: count % 7 });
        same("core", { held: ms });
        same("endurance", { finished: true, time: ms });
        same("endurance", { finished: false, roundsDone: few, repsDone: count });
      }),
    );
  });

  test("lengths from half centimetres or quarter inches, whichever unit is preferred", () => {
    const halves = fc.nat(900).map((half) => cm(half / 2));
    const quarters = fc.nat(700).map((quarter) => inches(quarter / 4));
    const pairs = fc.oneof(fc.tuple(halves, halves), fc.tuple(quarters, quarters));
    const mass = fc.option(fc.integer({ min: 20_000, max: 300_000 }), { nil: undefined });
    fc.assert(
      fc.property(
        pairs,
        mass,
        fc.constantFrom("cm", "in"),
        ([standingReach, touchReach], bodyMass, lengths) => {
          same(
            "vertical",
            { standingReach, touchReach, ...(bodyMass !== undefined && { bodyMass }) },
            lengths,
          );
        },
      ),
    );
  });

  test("a reach in centimetres with a touch in inches is never changed by a correction: one of them is asked again", () => {
    const seen = { standingReach: cm(219), touchReach: inches(102.75) };
    for (const lengths of ["cm", "in"] as const) {
      const again = retype("vertical", seen, lengths);
      const keyed = readKeyed("vertical", protocols.vertical.defaults, again.typed, again.lengths);
      expect("errors" in keyed && Object.keys(keyed.errors)).toEqual([
        again.lengths === "cm" ? "touch1" : "standingReach",
      ]);
    }
  });

  test("cadences become a tally with the same mark", () => {
    const { score, parameters, defaults } = protocols["push-up"];
    expect(parameters.parse(defaults)).toEqual(defaults);
    for (const cadences of ["", "...", "....xxx", "..x..x..xx", "xxx", "x"]) {
      const seen = { how: "cadences" as const, cadences };
      const keyed = readKeyed("push-up", defaults, retype("push-up", seen, "cm").typed, "cm");
      const tally = protocols["push-up"].attempt.parse("seen" in keyed ? keyed.seen[0] : null);
      expect(score(defaults, [tally])).toEqual(score(defaults, [seen]));
    }
  });
});
