import fc from "fast-check";
import { expect, test } from "vitest";
import { consentOf } from "../../../electron/domain/privacy/consent.ts";
import { ageBandOf, leagueSizeOf, quarterOf, quasiOf } from "../../../electron/domain/privacy/quasi.ts";

test.each([
  [2001, "25 to 29"],
  [1997, "25 to 29"],
  [1996, "30 to 34"],
  [2002, "20 to 24"],
  [2026, "0 to 4"],
  [1926, "100 to 104"],
  [2030, "unknown"],
  [null, "unknown"],
])("born in %s, the band on a day of 2026 is %s", (birthYear, band) => {
  expect(ageBandOf(birthYear, "2026-11-14")).toBe(band);
});

test("a band is fixed: everybody in it has the same five years, on whatever day of the year", () => {
  fc.assert(
    fc.property(fc.integer({ min: 1900, max: 2026 }), fc.integer({ min: 1, max: 12 }), (birthYear, month) => {
      const date = `2026-${String(month).padStart(2, "0")}-01`;
      const [, from, to] = /^(\d+) to (\d+)$/.exec(ageBandOf(birthYear, date)) ?? [];
      expect(Number(from) % 5).toBe(0);
      expect(Number(to)).toBe(Number(from) + 4);
      expect(2026 - birthYear).toBeGreaterThanOrEqual(Number(from));
      expect(2026 - birthYear).toBeLessThanOrEqual(Number(to));
    }),
  );
});

test.each([
  ["2026-01-01", "2026-Q1"],
  ["2026-03-31", "2026-Q1"],
  ["2026-04-01", "2026-Q2"],
  ["2026-09-30", "2026-Q3"],
  ["2026-12-31", "2026-Q4"],
])("%s is in %s", (date, quarter) => {
  expect(quarterOf(date)).toBe(quarter);
});

test.each([
  [1, "up to 14"],
  [14, "up to 14"],
  [15, "15 to 29"],
  [29, "15 to 29"],
  [30, "30 and more"],
  [210, "30 and more"],
])("a league of %d athletes has %s", (athletes, size) => {
  expect(leagueSizeOf(athletes)).toBe(size);
});

test("what is not known stays unknown and is not guessed", () => {
  expect(quasiOf({ birthYear: null, category: null, leagueAthletes: 14 }, "knee", "2026-11-14")).toEqual({
    ageBand: "unknown",
    category: "unknown",
    leagueSize: "up to 14",
    variant: "knee",
    quarter: "2026-Q4",
  });
});

test.each([
  [{ share: false, guardianConsent: true, birthYear: 1990 }, "no-share"],
  [{ share: true, guardianConsent: false, birthYear: 1990 }, "given"],
  [{ share: true, guardianConsent: false, birthYear: null }, "given"],
  [{ share: true, guardianConsent: false, birthYear: 2008 }, "no-guardian"],
  [{ share: true, guardianConsent: true, birthYear: 2008 }, "given"],
  [{ share: false, guardianConsent: false, birthYear: 2010 }, "no-share"],
  [{ share: true, guardianConsent: false, birthYear: 2007 }, "given"],
] as const)("%o on 2026-11-14: %s", (athlete, consent) => {
  expect(consentOf(athlete, "2026-11-14")).toBe(consent);
});
