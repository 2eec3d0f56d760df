import { expect, test } from "vitest";
import { requireFirst, requireHidden } from "../../electron/api/bundle/bundle.ts";
import { sortOut } from "../../electron/domain/privacy/able.ts";
import { playNeighbour, sightingsOf, unprotectedRows } from "../../electron/domain/privacy/neighbour.ts";
import { type PublishedRow, rowContent } from "../../electron/domain/privacy/publish.ts";
import { likenessOf } from "../../electron/domain/privacy/risk.ts";
import { usualStrictness } from "../../electron/domain/privacy/rule.ts";
import { playSubtraction } from "../../electron/domain/privacy/subtraction.ts";
import { Refusal } from "../../electron/domain/refusal.ts";
import { leaps } from "../unit/privacy/hall.ts";

const { able } = sortOut(leaps(Array.from({ length: 20 }, (_none, index) => 300 + 10 * index)));

/** What the door looks at of a bundle with these rows, where the board hides some. */
function judged(rows: readonly PublishedRow[], hidden: readonly number[] = []) {
  const sightings = sightingsOf(able).map((each) => ({ ...each, hidden: hidden.includes(each.who) }));
  const attack = playNeighbour(rows, sightings, { k: 5, linked: false });
  const subtraction = playSubtraction(rows, sightings, false);
  const likeness = likenessOf(rows, rowContent, rowContent);
  return { attack, subtraction, strictness: usualStrictness, likeness };
}

function refusal(work: () => void): unknown {
  try {
    work();
  } catch (error) {
    if (error instanceof Refusal) return [error.code, error.sentence];
    throw error;
  }
  return null;
}

test("a bundle of exact marks, if a rule ever made one, is refused with how many bibs could be picked out", () => {
  const rows = unprotectedRows(able, false);
  expect(refusal(() => requireHidden(judged(rows)))).toEqual([
    "unavailable",
    { key: "bundle.recognisable", values: { count: 20, percent: 100 } },
  ]);
});

/** All of them told as under a line and from it on, so many under it. */
function halves(under: number): PublishedRow[] {
  const line = 20 * (300 + 10 * under);
  return unprotectedRows(able, false).map((row, at) => ({
    ...row,
    marks: row.marks.map((mark) => ({
      ...mark,
      low: at < under ? null : line,
      high: at < under ? line : null,
    })),
  }));
}

test("so is one with a single row too few in a group", () => {
  const rows = halves(4);
  expect(refusal(() => requireHidden(judged(rows)))).toEqual([
    "unavailable",
    { key: "bundle.recognisable", values: { count: 4, percent: 20 } },
  ]);
});

test("so is one in which of somebody hidden a single interval is left, whoever else is in it", () => {
  const rows = halves(5);
  expect(refusal(() => requireHidden(judged(rows, [2])))).toEqual([
    "unavailable",
    { key: "bundle.recognisable", values: { count: 1, percent: 5 } },
  ]);
  expect(refusal(() => requireHidden(judged(rows, [2, 3])))).not.toBeNull();
  // One in each half: neither is told from the other.
  expect(refusal(() => requireHidden(judged(rows, [2, 12])))).toBeNull();
});

test("one in groups of five and more passes, and so does an empty one", () => {
  expect(refusal(() => requireHidden(judged(halves(5))))).toBeNull();
  expect(refusal(() => requireHidden(judged([])))).toBeNull();
});

test("of a day only the first file may leave, as often as it is asked for", () => {
  const first = { dayId: 1, at: "2026-11-14T09:00:00.000Z", k: 5, sha256: "a".repeat(64) };
  expect(refusal(() => requireFirst([], "b".repeat(64)))).toBeNull();
  expect(refusal(() => requireFirst([first], "a".repeat(64)))).toBeNull();
  expect(refusal(() => requireFirst([first], "b".repeat(64)))).toEqual([
    "conflict",
    expect.objectContaining({ key: "bundle.second" }),
  ]);
});
