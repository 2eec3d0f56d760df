import { expect, test } from "vitest";
import { dayOf, orderOf } from "../../../electron/sheets/dates.ts";

test.each([
  ["2026-03-14", "day", "2026-03-14"],
  ["2026/3/4", "month", "2026-03-04"],
  ["14.03.2026", "month", "2026-03-14"],
  ["3/14/2026", "month", "2026-03-14"],
  ["14/03/26", "day", "2026-03-14"],
  ["4-3-2026", "day", "2026-03-04"],
  ["4/3/2026", "month", "2026-04-03"],
  // Each of these means one day alone, whatever the others of its column say.
  ["3/14/2026", "day", "2026-03-14"],
  ["14/06/26", "month", "2026-06-14"],
  ["3.14.2026", "day", null],
  ["13/14/2026", "day", null],
  ["29.2.2024", "day", "2024-02-29"],
  ["29.2.2026", "day", null],
  ["14.03.", "day", null],
  ["45000", "day", null],
  ["March 2026", "day", null],
] as const)("%s with the %s first is %s", (text, order, day) => {
  expect(dayOf(text, order)).toBe(day);
});

test.each([
  [["03/04/2026", "14/03/2026"], "day"],
  [["03/04/2026", "3/14/2026"], "month"],
  [["03/04/2026", "", "5/6/26"], "open"],
  // Mixed orders decide nothing for a date that may be read in two ways: it has to be asked.
  [["14/06/26", "6/14/2026", "03/04/2026"], "open"],
  [["6/14/2026", "03/04/2026", "14/06/26"], "open"],
  [["14/06/26", "6/14/2026"], null],
  [["05/05/2026", "2026-03-14", "1.2.2026"], null],
  [[], null],
] as const)("the order of %j is %s", (texts, order) => {
  expect(orderOf(texts)).toBe(order);
});
