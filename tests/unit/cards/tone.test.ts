import { expect, test } from "vitest";
import { besidesOf, toneOf, wordingOf } from "../../../electron/domain/cards/tone.ts";
import type { Verdict } from "../../../electron/domain/statistics/change.ts";
import type { Standing } from "../../../electron/domain/statistics/standing.ts";

function day(...marks: [Standing, number | null, number | null][]) {
  return marks.map(([standing, beyond, byChance]) => ({ standing, beyond, byChance }));
}

test("the tone says what holds when all marks are looked at together, and no more", () => {
  expect(toneOf([])).toBe("first");
  expect(toneOf(day(["first", null, null], ["first", null, null]))).toBe("first");
  expect(toneOf(day(["first", null, null], ["below", -1, 0.5]))).toBe("steady");
  expect(toneOf(day(["best", 2, 0.5], ["below", -1, 0.6]))).toBe("best");
  expect(toneOf(day(["best", 4, 0.05], ["equal", 0, 1]))).toBe("gain");
  expect(toneOf(day(["best", 4, 0.05], ["below", -4, 0.15]))).toBe("mixed");
  expect(toneOf(day(["below", -4, 0.05], ["best", 1, 0.4]))).toBe("dip");
});

test("beside the tone stands what single tests say against it", () => {
  const verdicts = (...all: Verdict[]) => all.map((verdict) => ({ verdict }));
  expect(besidesOf("gain", verdicts("clear gain", "likely loss", "noise"))).toBe("lower");
  expect(besidesOf("gain", verdicts("clear gain", "noise"))).toBeNull();
  expect(besidesOf("dip", verdicts("clear loss", "likely gain"))).toBe("higher");
  expect(besidesOf("best", verdicts("likely gain", "noise"))).toBe("single");
  expect(besidesOf("steady", verdicts("noise", "likely loss"))).toBe("single");
  expect(besidesOf("steady", verdicts("noise", "noise"))).toBeNull();
  expect(besidesOf("mixed", verdicts("clear gain", "clear loss"))).toBeNull();
  expect(besidesOf("first", [{ verdict: null }])).toBeNull();
});

test("of five tests a chance of 4 in 100 counts, and one of 5 does not", () => {
  const others: [Standing, number, number][] = [0.5, 0.6, 0.7, 0.8].map((chance) => ["below", 1, chance]);
  expect(toneOf(day(["below", 3, 0.04], ...others))).toBe("gain");
  expect(toneOf(day(["below", 3, 0.041], ...others))).toBe("steady");
});

test("wordings differ from neighbour to neighbour and from day to day, and stay", () => {
  expect(wordingOf(4, "2026-11-14", 3)).toBe(wordingOf(4, "2026-11-14", 3));
  const three = [4, 5, 6].map((id) => wordingOf(id, "2026-11-14", 3));
  expect(three.toSorted()).toEqual([0, 1, 2]);
  expect(wordingOf(4, "2026-11-14", 3)).not.toBe(wordingOf(4, "2026-11-15", 3));
});
