import { expect, test } from "vitest";
import { ownFirst } from "../../../electron/domain/backups/order.ts";

const names = (backups: readonly [string, number][]) =>
  ownFirst(
    backups.map(([source, number]) => ({ source, number })),
    ({ source }) => source === "here",
  ).map(({ backup: { source, number }, own }) => `${source} ${number}${own ? "" : " other"}`);

test("own backups come first by number, then the newest of each other computer before the second of any", () => {
  const found: [string, number][] = [
    ["b", 900],
    ["b", 899],
    ["here", 3],
    ["a", 2],
    ["here", 12],
    ["a", 1],
  ];
  const expected = ["here 12", "here 3", "a 2 other", "b 900 other", "a 1 other", "b 899 other"];
  expect(names(found)).toEqual(expected);
  expect(names(found.toReversed())).toEqual(expected);
});
