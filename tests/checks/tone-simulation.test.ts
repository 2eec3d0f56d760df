import { expect, test } from "vitest";
import { toneOf } from "../../electron/domain/cards/tone.ts";
import { startingTypicalErrors, typicalError } from "../../electron/domain/statistics/change.ts";
import { holdTogether } from "../../electron/domain/statistics/holm.ts";
import { newsOf } from "../../electron/domain/statistics/news.ts";
import { definitionOf, type TestCode, testCodes } from "../../electron/domain/tests/registry.ts";
import { normals } from "./chance.ts";

// R: p.adjust(c(.01, .02, .03, .04, .05), "holm") is .05 .08 .09 .09 .09 (from memory): at a rate of 0.085 two hold.
test("Holm's rule holds those whose adjusted chance is within the rate", () => {
  const chances = [0.04, 0.01, 0.05, 0.02, 0.03];
  const adjusted = [0.09, 0.05, 0.09, 0.08, 0.09];
  for (const rate of [0.049, 0.051, 0.079, 0.081, 0.089, 0.091]) {
    expect(holdTogether(chances, rate), String(rate)).toEqual(adjusted.map((chance) => chance <= rate));
  }
  expect(holdTogether([], 0.2)).toEqual([]);
});

/** A mark of somebody who stayed the same since `earlier` tests. */
function news(test: TestCode, earlier: number, draw: () => number) {
  const level = definitionOf(test).figures.middling;
  const size = typicalError(test, level, startingTypicalErrors[test]);
  const mark = () => Math.round(level + size * draw());
  const before = Array.from({ length: earlier }, (_, at) => ({ date: `2026-0${at + 1}-10`, value: mark() }));
  return newsOf(test, { date: "2026-11-14", value: mark() }, before);
}

// Bar: at most 20 % of athletes who have not changed are told that anything moved; before, 92 %.
test.each([1, 3])(
  "five tests of athletes who stayed the same, with %i earlier ones: what the card's tone says",
  (earlier) => {
    const draw = normals(5 + earlier);
    const athletes = 10_000;
    const tones = Array.from({ length: athletes }, () =>
      toneOf(testCodes.map((code) => news(code, earlier, draw))),
    );
    const moved = tones.filter((tone) => ["gain", "dip", "mixed"].includes(tone)).length;
    console.log(`${earlier} earlier: ${((100 * moved) / athletes).toFixed(1)} % told that something moved`);
    expect(moved / athletes).toBeLessThan(0.2);
  },
);

test("and somebody who gained four typical errors in one test is mostly told so", () => {
  const draw = normals(8);
  const athletes = 2000;
  let told = 0;
  for (let athlete = 0; athlete < athletes; athlete += 1) {
    const marks = testCodes.map((code) => news(code, 1, draw));
    const size = typicalError("push-up", 40, startingTypicalErrors["push-up"]);
    const [before, after] = [40 + size * draw(), 40 + 4 * size + size * draw()].map(Math.round);
    const gained = newsOf("push-up", { date: "2026-11-14", value: after ?? 0 }, [
      { date: "2026-01-10", value: before ?? 0 },
    ]);
    if (["gain", "mixed"].includes(toneOf([gained, ...marks.slice(1)]))) told += 1;
  }
  // What a day may have moved for everybody costs a few of them.
  expect(told / athletes).toBeGreaterThan(0.65);
});
