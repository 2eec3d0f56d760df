import fc from "fast-check";
import { expect, test } from "vitest";
import { daysKept, superseded } from "../../../electron/domain/backups/keep.ts";

const made = fc
  .array(fc.tuple(fc.integer({ min: 1, max: 400 }), fc.integer({ min: 1, max: 60 })), { maxLength: 120 })
  .map((pairs) =>
    pairs.map(([number, day]) => ({ number, date: `2026-01-${String(day).padStart(2, "0")}` })),
  );
const today = "2026-01-30";

test("all of today stay, and of each other day the newest", () => {
  const backups = [
    { number: 1, date: "2026-01-28" },
    { number: 2, date: "2026-01-28" },
    { number: 3, date: "2026-01-29" },
    { number: 4, date: today },
    { number: 5, date: today },
  ];
  expect(superseded(backups, today).map(({ number }) => number)).toEqual([1]);
});

test("of forty other days the thirty newest keep one each", () => {
  const backups = Array.from({ length: 40 }, (_, index) => ({ number: index + 1, date: `day ${index}` }));
  expect(superseded(backups, today).map(({ number }) => number)).toEqual([10, 9, 8, 7, 6, 5, 4, 3, 2, 1]);
});

test("whatever the days, the newest of all stays, none of today goes, and no day that stays loses its newest", () => {
  fc.assert(
    fc.property(made, (backups) => {
      const gone = new Set(superseded(backups, today));
      const kept = backups.filter((backup) => !gone.has(backup));
      const newest = Math.max(0, ...backups.map(({ number }) => number));
      expect(Math.max(0, ...kept.map(({ number }) => number))).toBe(newest);
      expect([...gone].filter(({ date }) => date === today)).toEqual([]);
      const days = new Set(kept.filter(({ date }) => date !== today).map(({ date }) => date));
      const all = new Set(backups.filter(({ date }) => date !== today).map(({ date }) => date));
      expect(days.size).toBe(Math.min(all.size, daysKept));
    }),
  );
});
