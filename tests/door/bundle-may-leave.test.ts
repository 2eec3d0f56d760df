import { expect, test } from "vitest";
import { requireFirst, requireHidden } from "../../electron/api/bundle/may-leave.ts";
import { sortOut } from "../../electron/domain/privacy/able.ts";
import { playNeighbour, sightingsOf, unprotectedRows } from "../../electron/domain/privacy/neighbour.ts";
import { contentOf, type PublishedRow } from "../../electron/domain/privacy/publish.ts";
import { likenessOf } from "../../electron/domain/privacy/risk.ts";
import { usualStrictness } from "../../electron/domain/privacy/rule.ts";
import { Refusal } from "../../electron/domain/refusal.ts";
import { leaps } from "../unit/privacy/hall.ts";

const { able } = sortOut(leaps(Array.from({ length: 20 }, (_none, index) => 300 + 10 * index)));

/** What the door looks at of a bundle with these rows. */
function judged(rows: readonly PublishedRow[]) {
  const attack = playNeighbour(rows, sightingsOf(able), { k: 5, linked: false });
  return { attack, strictness: usualStrictness, likeness: likenessOf(rows, contentOf, contentOf) };
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

test("so is one with a single row too few in a group", () => {
  const rows = unprotectedRows(able, false).map((row, at) => ({
    ...row,
    marks: row.marks.map((mark) =>
      at < 4 ? { ...mark, low: null, high: 340 } : { ...mark, low: 340, high: null },
    ),
  }));
  expect(refusal(() => requireHidden(judged(rows)))).toEqual([
    "unavailable",
    { key: "bundle.recognisable", values: { count: 4, percent: 20 } },
  ]);
});

test("one in groups of five and more passes, and so does an empty one", () => {
  const rows = unprotectedRows(able, false).map((row, at) => ({
    ...row,
    marks: row.marks.map((mark) =>
      at < 5 ? { ...mark, low: null, high: 350 } : { ...mark, low: 350, high: null },
    ),
  }));
  expect(refusal(() => requireHidden(judged(rows)))).toBeNull();
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
