import { expect, test } from "vitest";
import { type Compared, focusOf } from "../../electron/domain/cards/focus.ts";
import { normalShare } from "../../electron/domain/statistics/normal.ts";
import { placeAmong } from "../../electron/domain/statistics/place.ts";
import { testCodes } from "../../electron/domain/tests/registry.ts";
import { normals } from "./chance.ts";

/**
 * Whether a place holds for the athlete and not for the mark alone. Marks of a group have the mean 1000 and the SD 60, of
 * which the day-to-day variation is a third, 20; what an athlete is good for varies by the rest.
 */
const [spread, error] = [60, 20];
const reach = 1.96 * error;
const sizes = [20, 50, 100, 300, 1000];

function groupOf(n: number, draw: () => number): number[] {
  return Array.from({ length: n }, () => 1000 + spread * draw());
}

// Bar: at least 95 % for every size; with the mark's own interval alone it was 84 to 28 %.
test.each(sizes)("the band holds the athlete's own place among %i", (n) => {
  const draw = normals(n);
  const groups = 40;
  let [held, all] = [0, 0];
  for (let at = 0; at < groups; at += 1) {
    const others = groupOf(n, draw);
    for (let athlete = 0; athlete < 50; athlete += 1) {
      const truth = Math.sqrt(spread ** 2 - error ** 2) * draw();
      const band = placeAmong("higher", Math.round(1000 + truth + error * draw()), others, 0, reach);
      const place = 100 * normalShare(truth / spread);
      all += 1;
      if (band !== null && band.low <= place && place <= band.high) held += 1;
    }
  }
  console.log(`among ${n}: the band holds the athlete's place in ${((100 * held) / all).toFixed(1)} %`);
  expect(held / all).toBeGreaterThan(0.95);
});

// Bar: at most 20 % of athletes with five equal truths get a test named, by both routes together; it was 18 to 64 %.
test.each([19, 30, 60, 120, 300, 1000])("five equal truths among %i: what to work on", (n) => {
  const draw = normals(7 * n);
  const athletes = 1200;
  const groups = testCodes.map(() => groupOf(n, draw));
  const named = { place: 0, change: 0 };
  for (let athlete = 0; athlete < athletes; athlete += 1) {
    const truth = Math.sqrt(spread ** 2 - error ** 2) * draw();
    const compared = testCodes.map((code, at): Compared => {
      const band = placeAmong(
        "higher",
        Math.round(1000 + truth + error * draw()),
        groups[at] ?? [],
        0,
        reach,
      );
      return { test: code, change: draw(), place: band === null ? null : { group: "store", ...band } };
    });
    const focus = focusOf(compared);
    if (focus.kind === "test") named[focus.by] += 1;
  }
  const percent = (count: number) => ((100 * count) / athletes).toFixed(1);
  console.log(
    `five equal truths among ${n}: named by place ${percent(named.place)} %, by change ${percent(named.change)} %`,
  );
  expect((named.place + named.change) / athletes).toBeLessThan(0.2);
});

test("a test that truly lags by four of its own variations is found among many, and it is that one", () => {
  const draw = normals(5);
  const groups = testCodes.map(() => groupOf(1000, draw));
  let [right, wrong] = [0, 0];
  for (let athlete = 0; athlete < 400; athlete += 1) {
    const compared = testCodes.map((code, at): Compared => {
      const mark = 1000 + error * draw() - (code === "core" ? 4 * error : 0);
      const band = placeAmong("higher", Math.round(mark), groups[at] ?? [], 0, reach);
      return { test: code, change: draw(), place: band === null ? null : { group: "store", ...band } };
    });
    const focus = focusOf(compared);
    if (focus.kind !== "test" || focus.by !== "place") continue;
    if (focus.test === "core") right += 1;
    else wrong += 1;
  }
  console.log(`a lag of 4 TE among 1000: found for ${right / 4} %, another named for ${wrong / 4} %`);
  expect(right / 400).toBeGreaterThan(0.6);
  expect(wrong / 400).toBeLessThan(0.02);
});
