import { expect, test } from "vitest";
import { groupsOf, type PageData, pageDataOf } from "../../../electron/domain/reference-table/page-data.ts";
import { fingerprint } from "../../../electron/domain/tests/fingerprint.ts";
import { testCodes } from "../../../electron/domain/tests/registry.ts";
import { largeTable } from "./large-table.ts";
import { group, plainTable } from "./making-table.ts";

const inPage = (data: PageData): PageData => JSON.parse(JSON.stringify(data));

test("the page has every group of a table that people can look up, to the last bound", () => {
  const data = inPage(pageDataOf(largeTable, "key"));
  expect(testCodes.flatMap((code) => groupsOf(data, code))).toEqual(largeTable.groups);
});

test("of several sets of rules it has the one of most results, and says whether that is the standard", () => {
  const slower = { beatsPerRep: 2, bpm: 30, missesToStop: 3 };
  const other = { ...group, fingerprint: fingerprint("push-up", "full", slower) };
  const table = { ...plainTable, publicKey: "", groups: [group, { ...other, marks: group.marks + 1 }] };
  const { tests } = pageDataOf(table, "key");
  expect(tests["push-up"]).toMatchObject({ parameters: slower, standard: false });
  expect(tests["push-up"].groups).toHaveLength(1);
  expect(tests.core).toMatchObject({ standard: true, groups: [] });
  const even = pageDataOf({ ...table, groups: [other, group] }, "key");
  expect(even.tests["push-up"].standard).toBe(true);
});

test("percentiles that are not told, and bounds that are open, stay so", () => {
  const open = {
    ...group,
    percentiles: [
      { percentile: 10, low: null, high: 5 },
      { percentile: 20, low: 5, high: 6 },
      { percentile: 90, low: 9, high: null },
    ],
  };
  const data = inPage(pageDataOf({ ...plainTable, publicKey: "", groups: [open] }, "key"));
  expect(groupsOf(data, "push-up")).toEqual([open]);
});
