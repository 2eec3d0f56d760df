import fc from "fast-check";
import { expect, test } from "vitest";
import { readKeyed } from "../../../electron/domain/keyed/keyed.ts";
import { protocols } from "../../../electron/domain/tests/registry.ts";
import { eitherTime, parseTime } from "../../../electron/domain/units.ts";

// That digits are typed without their colon: a reviewer saw 145 for 1:45 and 630 for 6:30. No published source.

test.each([
  ["145", { minutes: "1:45", seconds: "145 s", clock: "2:25" }],
  ["630", { minutes: "6:30", seconds: "630 s", clock: "10:30" }],
  [" 1012,5 ", { minutes: "10:12,5", seconds: "1012,5 s", clock: "16:52,5" }],
  ["0130", { minutes: "1:30", seconds: "0130 s", clock: "2:10" }],
])("%s could be two times", (text, readings) => {
  expect(eitherTime(text)).toEqual(readings);
});

test.each(["", "95", "190", "1:45", "145 s", "2.50", "1,020", "059", "12345", "14x"])(
  "%s could not",
  (text) => {
    expect(eitherTime(text)).toBeNull();
  },
);

test("each reading is read in one way alone, as it says", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 99 }),
      fc.integer({ min: 0, max: 59 }),
      fc.constantFrom("", ".4", ",25"),
      (minutes, seconds, part) => {
        const digits = `${minutes}${String(seconds).padStart(2, "0")}`;
        const either = eitherTime(digits + part);
        const fraction = part === "" ? 0 : Number(part.slice(1).padEnd(3, "0"));
        expect(parseTime(either?.minutes ?? "")).toEqual({ ms: (60 * minutes + seconds) * 1000 + fraction });
        expect(parseTime(either?.seconds ?? "")).toEqual({ ms: Number(digits) * 1000 + fraction });
        expect(eitherTime(either?.minutes ?? "")).toBeNull();
        expect(eitherTime(either?.seconds ?? "")).toBeNull();
      },
    ),
  );
});

test("a time that could be two is asked about at every test that takes times, and no attempt comes of it", () => {
  fc.assert(
    fc.property(
      fc.constantFrom("core" as const, "endurance" as const),
      fc.integer({ min: 100, max: 9999 }),
      (code, digits) => {
        const keyed = readKeyed(code, protocols[code].defaults, { time: `${digits}` }, "cm");
        const isEither = digits % 100 < 60;
        expect("either" in keyed).toBe(isEither);
        expect("seen" in keyed).toBe(!isEither);
      },
    ),
  );
});

test("a time that can't be read at all is refused before it is asked about", () => {
  const typed = { finished: "no", roundsDone: "x", repsDone: "3" };
  expect(readKeyed("endurance", protocols.endurance.defaults, typed, "cm")).toHaveProperty("errors");
});
