import fc from "fast-check";
import { expect, test } from "vitest";
import { nextWindow } from "../../../electron/domain/cards/window.ts";

/** Worked out by hand on a calendar: 12 weeks are 84 days, 17 weeks 119. */
test.each([
  ["2026-11-14", "2027-02-06", "2027-03-13", "over the end of a year without a leap day"],
  ["2027-12-04", "2028-02-26", "2028-04-01", "the leap day lies between the two"],
  ["2028-02-29", "2028-05-23", "2028-06-27", "from a leap day"],
  ["2023-12-07", "2024-02-29", "2024-04-04", "onto a leap day"],
  ["2099-12-08", "2100-03-02", "2100-04-06", "2100 has no leap day"],
])("the next window of %s is %s to %s: %s", (date, from, until) => {
  expect(nextWindow(date)).toEqual({ from, until });
});

test("the window is 12 to 17 weeks on, and begins and ends on the same day of the week", () => {
  const days = fc.date({ min: new Date("1990-01-01"), max: new Date("2190-01-01"), noInvalidDate: true });
  fc.assert(
    fc.property(days, (at) => {
      const date = at.toISOString().slice(0, 10);
      const { from, until } = nextWindow(date);
      const after = (later: string) => (Date.parse(later) - Date.parse(date)) / 86_400_000;
      expect([after(from), after(until)]).toEqual([84, 119]);
      expect(new Date(from).getUTCDay()).toBe(new Date(date).getUTCDay());
    }),
  );
});
