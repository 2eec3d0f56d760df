import { expect, test } from "vitest";
import { toneOf, wordingOf } from "../../../electron/domain/cards/tone.ts";
import type { Verdict } from "../../../electron/domain/statistics/change.ts";
import type { Standing } from "../../../electron/domain/statistics/standing.ts";

function day(...marks: [Standing, Verdict | null][]) {
  return marks.map(([standing, verdict]) => ({ standing, verdict }));
}

test("the tone says what the verdicts say, and no more", () => {
  expect(toneOf([])).toBe("first");
  expect(toneOf(day(["first", null], ["first", null]))).toBe("first");
  expect(toneOf(day(["first", null], ["below", "noise"]))).toBe("steady");
  expect(toneOf(day(["best", "noise"], ["below", "noise"]))).toBe("best");
  expect(toneOf(day(["best", "likely gain"], ["equal", "noise"]))).toBe("gain");
  expect(toneOf(day(["best", "clear gain"], ["below", "likely loss"]))).toBe("mixed");
  expect(toneOf(day(["below", "clear loss"], ["best", "noise"]))).toBe("dip");
});

test("wordings differ from neighbour to neighbour and from day to day, and stay", () => {
  expect(wordingOf(4, "2026-11-14", 3)).toBe(wordingOf(4, "2026-11-14", 3));
  const three = [4, 5, 6].map((id) => wordingOf(id, "2026-11-14", 3));
  expect(three.toSorted()).toEqual([0, 1, 2]);
  expect(wordingOf(4, "2026-11-14", 3)).not.toBe(wordingOf(4, "2026-11-15", 3));
});
