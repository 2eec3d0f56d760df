import fc from "fast-check";
import { expect, test } from "vitest";
import { cardSize, layOut } from "../../../renderer/screens/cards/papers.ts";
import { nameOf, pathOf, whichNamed } from "../../../renderer/screens/cards/which.ts";
import { forFile } from "../../../renderer/words/forFile.ts";

test("one card a sheet, or two, so that the piles of a cut are in order", () => {
  expect(layOut(["a", "b", "c"], "a5")).toEqual([["a"], ["b"], ["c"]]);
  expect(layOut(["a", "b", "c", "d"], "a4-two")).toEqual([
    ["a", "c"],
    ["b", "d"],
  ]);
  expect(layOut(["a", "b", "c"], "letter-two")).toEqual([
    ["a", "c"],
    ["b", null],
  ]);
  expect(layOut([], "a4-two")).toEqual([]);
});

test("cutting any pile and putting the right under the left gives the list again", () => {
  fc.assert(
    fc.property(fc.array(fc.integer(), { maxLength: 60 }), (items) => {
      const sheets = layOut(items, "letter-two");
      const left = sheets.map(([first]) => first);
      const right = sheets.flatMap(([, second]) => second ?? []);
      expect([...left, ...right]).toEqual(items);
    }),
  );
});

test("half of a sheet is the size of the small one", () => {
  expect(["a5", "a4-two"].map((paper) => cardSize(paper as "a5"))).toEqual(["a5", "a5"]);
  expect(["half-letter", "letter-two"].map((paper) => cardSize(paper as "a5"))).toEqual([
    "half-letter",
    "half-letter",
  ]);
});

test("a choice comes back from its address, and nothing else is one", () => {
  for (const which of [
    { kind: "all" },
    { kind: "league", leagueId: 3 },
    { kind: "athlete", athleteId: 12 },
  ] as const) {
    expect(whichNamed(nameOf(which))).toEqual(which);
  }
  for (const name of ["", "league", "league-", "league-x", "athlete-1-2", "team-1", "all-1", "athlete--1"]) {
    expect(whichNamed(name), name).toBeNull();
  }
  expect(pathOf("current", { kind: "athlete", athleteId: 12 })).toBe("/cards/current/athlete-12");
});

test("a name becomes part of a file's name on every system, and is never too long", () => {
  expect(forFile("Övre Kvarn")).toBe("Övre Kvarn");
  expect(forFile('A/C: "Nº 1" <b>|?*\\')).toBe("A C Nº 1 b");
  expect(forFile("🛼".repeat(100))).toBe("🛼".repeat(30));
  fc.assert(
    fc.property(fc.string({ unit: "grapheme", maxLength: 200 }), (name) => {
      expect(forFile(name)).toMatch(/^[^\p{Cc}\\/:*?"<>|]{0,120}$/u);
      expect(forFile(name).length).toBeLessThanOrEqual(60);
    }),
  );
});
